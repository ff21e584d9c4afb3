import type { Book } from "../../shared/book/book.ts";
import { byCollection } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import { withdrawnOf } from "../../shared/model/withdrawn.ts";
import type { Database } from "./database.ts";
import type { Debt } from "./owed.ts";
import { type Data, type Row, rowColumns, storedOf } from "./rows.ts";

/** What a record was before a later write; without a body it wasn't there. */
interface Undo extends Omit<Row, "body"> {
  readonly collection: string;
  readonly body: string | null;
}

const UNDO = `SELECT collection, ${rowColumns()} FROM undo WHERE seq > ? ORDER BY seq`;
const STATE = `SELECT body FROM records WHERE collection = 'tests' AND id = @test AND revision = @revision
  UNION ALL SELECT body FROM revisions WHERE collection = 'tests' AND id = @test AND revision = @revision`;

const byEntry = (a: Stored<Data>, b: Stored<Data>): number =>
  a.createdAt === b.createdAt ? (a.id < b.id ? -1 : 1) : a.createdAt < b.createdAt ? -1 : 1;

function statesThen(now: readonly Stored<Data>[], undone: readonly Undo[]): readonly Stored<Data>[] {
  if (undone.length === 0) return now;
  const first = new Map<string, Undo>();
  for (const each of undone) if (!first.has(each.id)) first.set(each.id, each);
  const back = [...first.values()].flatMap((row) => (row.body === null ? [] : [storedOf(row as Row)]));
  return [...now.filter(({ id }) => !first.has(id)), ...back].sort(byEntry);
}

/**
 * The book as it was when a prediction was owed to a test, that test as written included.
 *
 * @param database - whose transaction holds `now`
 * @param now - the book that figures are based on, as it is
 */
export function bookThen(database: Database, now: Book, { since }: Debt): Book {
  const undone = database.prepare<[number], Undo>(UNDO).all(since);
  if (undone.length === 0) return now;
  const inForce = ({ data }: Stored<Data>) => withdrawnOf(data) === null;
  const states = now as unknown as Record<string, readonly Stored<Data>[]>;
  const then = byCollection((name) => {
    const own = statesThen(
      states[name],
      undone.filter(({ collection }) => collection === name),
    );
    return name === "tests" ? own.filter(inForce) : own;
  });
  return then as unknown as Book;
}

/** @returns what a test said at a revision; null where it had none */
export function testAt(database: Database, test: string, revision: number): Data | null {
  const body = database.prepare(STATE).pluck().get({ test, revision }) as string | undefined;
  return body === undefined ? null : (JSON.parse(body) as Data);
}
