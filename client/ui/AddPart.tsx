import { COLLECTION_WORDS, type CollectionName } from "../../shared/model/collections.ts";
import { href } from "../app/router.ts";

/** Beside a choice of parts of which the book has none: where one is added. */
export function AddPart({ collection }: { readonly collection: CollectionName }) {
  if (collection === "tests" || collection === "builds") return null;
  return (
    <>
      none in the book yet:{" "}
      <a href={href("parts", `${collection}/new`)}>add a {COLLECTION_WORDS[collection]}</a>
    </>
  );
}
