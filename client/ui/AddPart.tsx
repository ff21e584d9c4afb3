import { COLLECTION_WORDS, type CollectionName } from "../../shared/model/collections.ts";
import { href } from "../app/router.ts";
import { withArticle } from "./article.ts";

/** Beside a choice of parts of which the book has none: where one is added. */
export function AddPart({ collection }: { readonly collection: CollectionName }) {
  if (collection === "tests" || collection === "builds") return null;
  return (
    <>
      none in the book yet:{" "}
      <a href={href("parts", `${collection}/new`)}>add {withArticle(COLLECTION_WORDS[collection])}</a>
    </>
  );
}
