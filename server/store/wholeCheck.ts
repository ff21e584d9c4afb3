import { CONTRADICTABLE } from "../../shared/book/contradictions.ts";
import type { FieldError } from "../../shared/model/api/errors.ts";
import { COLLECTION_NAMES, type CollectionName } from "../../shared/model/collections.ts";
import { referencesOf, type Stored } from "../../shared/model/record.ts";
import { Refusal } from "../refusal.ts";
import { contradictionsIn } from "./agreement.ts";
import type { Data } from "./rows.ts";
import type { WholeBook } from "./wholeBook.ts";

/** Fields that an answer names. */
const MOST_FIELDS = 100;

function firstOf(faults: readonly Iterable<FieldError>[]): FieldError[] {
  const fields: FieldError[] = [];
  for (const each of faults)
    for (const field of each) {
      fields.push(field);
      if (fields.length === MOST_FIELDS) return fields;
    }
  return fields;
}

function refuseAny(...faults: Iterable<FieldError>[]): void {
  const fields = firstOf(faults);
  if (fields.length === 0) return;
  const [first] = fields;
  throw new Refusal(422, "inconsistent", `${first.path}: ${first.message}`, fields);
}

/**
 * What the program itself wrote, perhaps before it knew a contradiction: it is as good as the book that it was copied from.
 *
 * @throws {Refusal} 422 where a whole book isn't one: an id or a revision twice, a state later than its record, a part that it doesn't have
 */
export function requireIntact(book: WholeBook): void {
  refuseAny(twice(book), laterThanRecord(book), missingParts(book));
}

/** @throws {Refusal} 422 where a whole book isn't intact, or a test in it can't be true of its rotor, plate or instruments */
export function requireConsistent(book: WholeBook): void {
  refuseAny(twice(book), laterThanRecord(book), missingParts(book), contradictions(book));
}

function* placed<T>(entries: Iterable<T>, place: string): Generator<[T, string]> {
  let i = 0;
  for (const entry of entries) {
    yield [entry, `${place}.${i}`];
    i += 1;
  }
}

/** In a record's history the same revision can't stand twice, the present one included. */
function* twice({ records, revisions }: WholeBook): Generator<FieldError> {
  for (const name of COLLECTION_NAMES) {
    const present = new Set<string>();
    const states = new Set<string>();
    for (const [record, place] of placed(records[name], `records.${name}`)) {
      states.add(stateOf(record));
      yield* seen(present, record.id, `${place}.id`);
    }
    for (const [earlier, place] of placed(revisions[name], `revisions.${name}`))
      yield* seen(states, stateOf(earlier), `${place}.revision`);
  }
}

const stateOf = ({ id, revision }: Stored<Data>): string => `${id} revision ${revision}`;

function seen(before: Set<string>, key: string, path: string): FieldError[] {
  if (before.has(key)) return [{ path, message: `Read "${key}" twice; allowed: each once.` }];
  before.add(key);
  return [];
}

/** What a record said before has a lower revision than it has now. */
function* laterThanRecord({ records, revisions }: WholeBook): Generator<FieldError> {
  for (const name of COLLECTION_NAMES) {
    const now = new Map<string, number>();
    for (const { id, revision } of records[name]) now.set(id, revision);
    for (const [{ id, revision }, place] of placed(revisions[name], `revisions.${name}`)) {
      const present = now.get(id);
      if (present === undefined || revision <= present) continue;
      const message = `Read ${revision}, later than "${id}" is now; allowed: below its revision ${present}.`;
      yield { path: `${place}.revision`, message };
    }
  }
}

function idsOf(...lists: Iterable<Stored<Data>>[]): Set<string> {
  const ids = new Set<string>();
  for (const list of lists) for (const { id } of list) ids.add(id);
  return ids;
}

/** A record points to what the book has, a state of the past to what the book has or once had. */
function* missingParts({ records, revisions }: WholeBook): Generator<FieldError> {
  const now = new Map(COLLECTION_NAMES.map((name) => [name, idsOf(records[name])]));
  const ever = new Map(COLLECTION_NAMES.map((name) => [name, idsOf(records[name], revisions[name])]));
  for (const name of COLLECTION_NAMES) {
    for (const [{ data }, place] of placed(records[name], `records.${name}`))
      yield* dangling(name, data, now, `${place}.data`);
    for (const [{ data }, place] of placed(revisions[name], `revisions.${name}`))
      yield* dangling(name, data, ever, `${place}.data`);
  }
}

type Ids = ReadonlyMap<CollectionName, ReadonlySet<string>>;

const dangling = (name: CollectionName, data: Data, known: Ids, place: string): FieldError[] =>
  referencesOf(name, data)
    .filter(({ collection, id }) => !known.get(collection)?.has(id))
    .map(({ path, collection, id }) => ({
      path: `${place}.${path}`,
      message: `Read "${id}"; allowed: the id of one of the archive's ${collection}.`,
    }));

function* contradictions({ records }: WholeBook): Generator<FieldError> {
  const parts = new Map(
    CONTRADICTABLE.map((name) => {
      const known = new Map<string, Data>();
      for (const { id, data } of records[name]) known.set(id, data);
      return [name, known];
    }),
  );
  for (const [{ data }, place] of placed(records.tests, "records.tests"))
    for (const { path, message } of contradictionsIn(data, (collection, id) =>
      parts.get(collection)?.get(id),
    ))
      yield { path: `${place}.data.${path}`, message };
}
