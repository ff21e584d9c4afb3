import type { Book } from "../../../../shared/book/book.ts";
import { AIR_FIELDS } from "../record/kinds.ts";
import { writeDraft } from "../record/writeDraft.ts";

/** The air of the newest test that has one. */
export interface LastAir {
  readonly date: string;
  /** by the fields' paths, as they were typed */
  readonly texts: Readonly<Record<string, string>>;
}

/** @returns the air that was read last, in a test of any kind; null where none was */
export function lastAir(book: Pick<Book, "tests">): LastAir | null {
  const order = (test: Book["tests"][number]) => `${test.data.date} ${test.createdAt}`;
  const newest = book.tests.reduce<Book["tests"][number] | null>(
    (last, test) => (!test.data.air || (last && order(last) > order(test)) ? last : test),
    null,
  );
  if (!newest) return null;
  const { fields } = writeDraft({ ...newest.data, rows: [] } as typeof newest.data);
  return {
    date: newest.data.date,
    texts: Object.fromEntries(AIR_FIELDS.map(({ key }) => [key, fields[key] ?? ""])),
  };
}
