import { currentBook } from "../../../state/book.ts";
import { SaveCsv } from "../../../ui/SaveCsv.tsx";
import type { Filters } from "./filters.ts";
import { listCsv } from "./listCsv.ts";

/** Saves the list as it is narrowed. */
export function SaveList({ filters }: { readonly filters: Filters }) {
  return (
    <SaveCsv label="save the list as CSV" name="tests.csv" make={() => listCsv(filters, currentBook.value)} />
  );
}
