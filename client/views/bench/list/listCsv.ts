import type { Book } from "../../../../shared/book/book.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { api } from "../../../state/api.ts";
import { type Table, toCsv } from "../../../ui/table.ts";
import { KINDS } from "../record/kinds.ts";
import { type Filters, pagePath } from "./filters.ts";
import { partNames } from "./partNames.ts";
import { resultLine } from "./resultLine.ts";

type Stored = StoredOf<"tests">;

/** So many tests come at once, the most that a page holds. */
const PAGE = 500;

/** The list of tests as a table: what each was of, and what it found. */
export function listTable(tests: readonly Stored[], book: Book | null): Table {
  return {
    columns: ["Date", "Kind", "Title", "Parts", "Rows", "Result", "Note", "Struck out because"],
    rows: tests.map(({ data }) => [
      data.date,
      KINDS[data.kind].name,
      data.title,
      partNames(data, book),
      data.rows.length,
      resultLine(data),
      data.note,
      data.struckOut ?? "",
    ]),
  };
}

/** @returns every test that the list is narrowed to, as CSV @throws {ApiError} */
export async function listCsv(filters: Filters, book: Book | null): Promise<string> {
  const tests: Stored[] = [];
  let cursor: string | null = null;
  do {
    const page: { readonly items: readonly Stored[]; readonly next: string | null } = await api.get(
      pagePath(filters, PAGE, cursor),
    );
    tests.push(...page.items);
    cursor = page.next;
  } while (cursor !== null);
  return toCsv(listTable(tests, book));
}
