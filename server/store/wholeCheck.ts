import { CONTRADICTABLE } from "../../shared/book/contradictions.ts";
import type { FieldError } from "../../shared/model/api/errors.ts";
import { Refusal } from "../refusal.ts";
import { contradictionsIn } from "./agreement.ts";
import type { Data } from "./rows.ts";
import type { Staged } from "./staged.ts";

/** Fields that an answer names. */
const MOST_FIELDS = 100;

function refuseAny(...faults: Iterable<FieldError>[]): void {
  const fields: FieldError[] = [];
  for (const each of faults) for (const field of each) if (fields.length < MOST_FIELDS) fields.push(field);
  if (fields.length === 0) return;
  const [first] = fields;
  throw new Refusal(422, "inconsistent", `${first.path}: ${first.message}`, fields);
}

/**
 * What the program itself wrote, perhaps before it knew a contradiction: it is as good as the book that it was copied from.
 *
 * @throws {Refusal} 422 where a whole book isn't one: an id or a revision twice, a state later than its record, a part that it doesn't have
 */
export function requireIntact(staged: Staged): void {
  staged.index();
  refuseAny(recordsTwice(staged), statesTwice(staged), laterThanRecord(staged), missingParts(staged));
}

/** @throws {Refusal} 422 where a whole book isn't intact, or a test in it can't be true of its rotor, plate or instruments */
export function requireConsistent(staged: Staged): void {
  requireIntact(staged);
  refuseAny(contradictions(staged));
}

/** A row that a check finds: where it stands, and what else its words name. */
interface Found {
  readonly part: string;
  readonly collection: string;
  readonly place: number;
  readonly id: string;
  readonly revision: number;
  readonly present: number;
}

function found<T>({ database }: Staged, sql: string): T[] {
  return database.prepare(`${sql} LIMIT ${MOST_FIELDS}`).all() as T[];
}

const twice = (path: string, read: string): FieldError => ({
  path,
  message: `Read "${read}" twice; allowed: each once.`,
});

const recordsTwice = (staged: Staged): FieldError[] =>
  found<Found>(
    staged,
    `SELECT s.* FROM states AS s WHERE part = 'records' AND EXISTS (SELECT 1 FROM states AS o
       WHERE o.collection = s.collection AND o.id = s.id AND o.part = 'records' AND o.place < s.place)
     ORDER BY s.rowid`,
  ).map(({ collection, place, id }) => twice(`records.${collection}.${place}.id`, id));

/** In a record's history the same revision can't stand twice, the present one included. */
const statesTwice = (staged: Staged): FieldError[] =>
  found<Found>(
    staged,
    `SELECT s.* FROM states AS s WHERE part = 'revisions' AND EXISTS (SELECT 1 FROM states AS o
       WHERE o.collection = s.collection AND o.id = s.id AND o.revision = s.revision
         AND (o.part = 'records' OR o.place < s.place))
     ORDER BY s.rowid`,
  ).map(({ collection, place, id, revision }) =>
    twice(`revisions.${collection}.${place}.revision`, `${id} revision ${revision}`),
  );

/** What a record said before has a lower revision than it has now. */
const laterThanRecord = (staged: Staged): FieldError[] =>
  found<Found>(
    staged,
    `SELECT s.*, r.revision AS present FROM states AS s
       JOIN states AS r ON r.collection = s.collection AND r.id = s.id AND r.part = 'records'
     WHERE s.part = 'revisions' AND s.revision > r.revision ORDER BY s.rowid`,
  ).map(({ collection, place, id, revision, present }) => ({
    path: `revisions.${collection}.${place}.revision`,
    message: `Read ${revision}, later than "${id}" is now; allowed: below its revision ${present}.`,
  }));

interface Dangling extends Found {
  readonly path: string;
  readonly part_collection: string;
  readonly part_id: string;
}

/** A record points to what the book has, a state of the past to what the book has or once had. */
const missingParts = (staged: Staged): FieldError[] =>
  found<Dangling>(
    staged,
    `SELECT u.* FROM uses AS u WHERE NOT EXISTS (SELECT 1 FROM states AS s
       WHERE s.collection = u.part_collection AND s.id = u.part_id AND (s.part = 'records' OR u.part = 'revisions'))
     ORDER BY u.rowid`,
  ).map(({ part, collection, place, path, part_collection, part_id }) => ({
    path: `${part}.${collection}.${place}.data.${path}`,
    message: `Read "${part_id}"; allowed: the id of one of the archive's ${part_collection}.`,
  }));

/** Read in the order in which they lie; the sign keeps SQLite from the index, which would have it sort all bodies. */
const BODIES = "SELECT id, place, body FROM states WHERE part = 'records' AND +collection = ? ORDER BY rowid";

interface Body {
  readonly id: string;
  readonly place: number;
  readonly body: string;
}

function* contradictions({ database }: Staged): Generator<FieldError> {
  const bodies = database.prepare<[string], Body>(BODIES);
  const read = (name: string): [string, Data][] =>
    bodies.all(name).map(({ id, body }) => [id, JSON.parse(body) as Data]);
  const parts = new Map(CONTRADICTABLE.map((name) => [name, new Map(read(name))]));
  for (const { place, body } of bodies.iterate("tests"))
    for (const { path, message } of contradictionsIn(JSON.parse(body) as Data, (collection, id) =>
      parts.get(collection)?.get(id),
    ))
      yield { path: `records.tests.${place}.data.${path}`, message };
}
