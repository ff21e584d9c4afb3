import {
  CONTRADICTABLE,
  type Compared,
  type Contradictable,
  contradictionsOf,
} from "../../shared/book/contradictions.ts";
import type { FieldError } from "../../shared/model/api/errors.ts";
import type { CollectionName } from "../../shared/model/collections.ts";
import { referencesOf } from "../../shared/model/record.ts";
import { withdrawnOf } from "../../shared/model/withdrawn.ts";
import type { Database, Statement } from "./database.ts";
import { ContradictionError } from "./errors.ts";
import type { Data } from "./rows.ts";

/** Tests that a refusal names, of those that a changed part contradicts. */
const NAMED = 5;

type Collection = keyof Contradictable;
type Part = Contradictable[Collection];

const isContradictable = (name: CollectionName): name is Collection =>
  (CONTRADICTABLE as readonly CollectionName[]).includes(name);

/** Finds the data of a part; undefined where there is none. */
type Lookup = (collection: Collection, id: string) => unknown;

/** @returns what in a test contradicts the parts that it names, those that are found; nothing of a test that is struck out */
export function contradictionsIn(data: Data, find: Lookup): FieldError[] {
  if (withdrawnOf(data) !== null) return [];
  return referencesOf("tests", data).flatMap(({ collection, id, path }) => {
    const part = isContradictable(collection) ? find(collection, id) : undefined;
    return part
      ? contradictionsOf(data as unknown as Compared, collection as Collection, part as Part, path)
      : [];
  });
}

interface TestRow {
  readonly id: string;
  readonly name: string;
  readonly date: string;
  readonly body: string;
}

/** Looks after tests and parts that can't both be true: a size that the rotor hasn't, more holes open than the plate has. */
export class Agreement {
  readonly #part: Statement;
  readonly #tests: Statement;

  constructor(database: Database) {
    this.#part = database.prepare("SELECT body FROM records WHERE collection = ? AND id = ?").pluck();
    this.#tests = database.prepare(
      `SELECT r.id, r.name, r.day AS date, r.body FROM uses AS u JOIN records AS r ON r.collection = u.collection AND r.id = u.id
       WHERE u.part_collection = ? AND u.part = ? AND u.collection = 'tests'`,
    );
  }

  /**
   * @param id - of the record that the data take the place of; null for a new one
   * @throws {ContradictionError} naming each field
   */
  require(collection: CollectionName, data: Data, id: string | null): void {
    const fields = collection === "tests" ? this.#ofTest(data) : this.#ofPart(collection, data, id);
    if (fields.length > 0) throw new ContradictionError(fields);
  }

  #ofTest(data: Data): FieldError[] {
    return contradictionsIn(data, (collection, id) => {
      const body = this.#part.get(collection, id);
      return body === undefined ? undefined : JSON.parse(String(body));
    });
  }

  #ofPart(collection: CollectionName, data: Data, id: string | null): FieldError[] {
    if (!isContradictable(collection) || id === null || !this.#isChanged(collection, data, id)) return [];
    const contradicted: FieldError[] = [];
    const changed: Lookup = (of, named) => (of === collection && named === id ? data : undefined);
    for (const row of this.#tests.iterate(collection, id) as Iterable<TestRow>) {
      const test = JSON.parse(row.body) as Data;
      const [first] = contradictionsIn(test, changed);
      if (first) contradicted.push(saidOfPart(collection, first, row, test));
      if (contradicted.length === NAMED) break;
    }
    return contradicted;
  }

  #isChanged(collection: Collection, data: Data, id: string): boolean {
    const before = JSON.parse(String(this.#part.get(collection, id))) as Data;
    return COMPARED[collection].some((key) => JSON.stringify(before[key]) !== JSON.stringify(data[key]));
  }
}

/** What of a part a test can contradict. */
const COMPARED: Readonly<Record<Collection, readonly string[]>> = {
  rotors: ["kind", "sizes"],
  plates: ["holes"],
  instruments: ["measures"],
};

/** Which field of a changed part a contradicted field of a test speaks of. */
const FIELDS: Readonly<Record<Collection, (path: string) => string>> = {
  rotors: (path) => (path === "rotor" ? "kind" : "sizes"),
  plates: () => "holes",
  instruments: () => "measures",
};

/** The same contradiction, said of the part that is being changed. */
function saidOfPart(
  collection: Collection,
  { path, message }: FieldError,
  { id, name, date }: TestRow,
  { kind }: Data,
): FieldError {
  const test = `The ${kind} test "${name || id}" of ${date} was made with it as it is`;
  return {
    path: FIELDS[collection](path),
    message: `${test}. With this change, its ${path} would be wrong: ${message}`,
  };
}
