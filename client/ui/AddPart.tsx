import type { CollectionName } from "../../shared/model/record.ts";
import { href } from "../app/router.ts";

const ONE: Readonly<Record<Exclude<CollectionName, "tests" | "builds">, string>> = {
  rotors: "rotor",
  motors: "motor",
  packs: "pack",
  skirts: "skirt",
  surfaces: "surface",
};

/** Beside a choice of parts of which the book has none: where one is added. */
export function AddPart({ collection }: { readonly collection: CollectionName }) {
  if (collection === "tests" || collection === "builds") return null;
  return (
    <>
      none in the book yet: <a href={href("parts", `${collection}/new`)}>add a {ONE[collection]}</a>
    </>
  );
}
