import { contradictionsOf, isRotorTest, type RotorTest } from "../../shared/book/contradictions.ts";
import type { FieldError } from "../../shared/model/api/errors.ts";
import type { CollectionName } from "../../shared/model/collections.ts";
import type { Rotor } from "../../shared/model/parts/rotor.ts";
import type { Database, Statement } from "./database.ts";
import { ContradictionError } from "./errors.ts";
import type { Data } from "./rows.ts";

/** Tests that a refusal names, of those that a changed rotor contradicts. */
const NAMED = 5;

interface TestRow {
  readonly id: string;
  readonly name: string;
  readonly date: string;
  readonly test: string;
}

/** Looks after tests and rotors that can't both be true: a test of the other kind of rotor, or of a size that it hasn't. */
export class Agreement {
  readonly #rotor: Statement;
  readonly #tests: Statement;

  constructor(database: Database) {
    this.#rotor = database.prepare("SELECT body FROM records WHERE collection = 'rotors' AND id = ?").pluck();
    this.#tests = database.prepare(
      `SELECT r.id, r.name, r.day AS date, json_object('kind', r.kind, 'diameter', r.body -> '$.diameter') AS test
       FROM uses AS u JOIN records AS r ON r.collection = u.collection AND r.id = u.id
       WHERE u.part_collection = 'rotors' AND u.part = ? AND u.collection = 'tests' AND r.body -> '$.diameter' IS NOT NULL`,
    );
  }

  /**
   * @param id - of the record that the data take the place of; null for a new one
   * @throws {ContradictionError} naming each field
   */
  require(collection: CollectionName, data: Data, id: string | null): void {
    const fields = collection === "tests" ? this.#ofTest(data) : this.#ofRotor(collection, data, id);
    if (fields.length > 0) throw new ContradictionError(fields);
  }

  #ofTest(data: Data): FieldError[] {
    if (!isRotorTest(data)) return [];
    return contradictionsOf(data, JSON.parse(String(this.#rotor.get(data.rotor))) as Rotor);
  }

  #ofRotor(collection: CollectionName, data: Data, id: string | null): FieldError[] {
    if (collection !== "rotors" || id === null) return [];
    const rotor = data as unknown as Rotor;
    const contradicted: FieldError[] = [];
    for (const row of this.#tests.iterate(id) as Iterable<TestRow>) {
      const [first] = contradictionsOf(JSON.parse(row.test) as RotorTest, rotor);
      if (first) contradicted.push(asOfRotor(first, row));
      if (contradicted.length === NAMED) break;
    }
    return contradicted;
  }
}

/** The same contradiction, said of the rotor that is being changed. */
function asOfRotor({ path }: FieldError, { id, name, date, test }: TestRow): FieldError {
  const { kind, diameter } = JSON.parse(test) as RotorTest;
  const named = `the ${kind} test "${name || id}" of ${date}`;
  return path === "rotor"
    ? {
        path: "kind",
        message: `Read another kind than ${named} was made with; allowed: the kind it has. Add the other as a rotor of its own.`,
      }
    : {
        path: "sizes",
        message: `Without ${diameter.value} ${diameter.unit}, at which ${named} was made; allowed: a list that keeps it.`,
      };
}
