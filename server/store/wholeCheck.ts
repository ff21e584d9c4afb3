import { CONTRADICTABLE } from "../../shared/book/contradictions.ts";
import type { FieldError } from "../../shared/model/api/errors.ts";
import { COLLECTION_NAMES, type CollectionName } from "../../shared/model/collections.ts";
import { referencesOf, type Stored } from "../../shared/model/record.ts";
import { Refusal } from "../refusal.ts";
import { contradictionsIn } from "./agreement.ts";
import type { Data } from "./rows.ts";
import type { WholeBook } from "./wholeBook.ts";

function refuse(fields: readonly FieldError[]): void {
  if (fields.length === 0) return;
  const [first] = fields;
  throw new Refusal(422, "inconsistent", `${first.path}: ${first.message}`, fields);
}

const brokenIn = (book: WholeBook): FieldError[] => [
  ...twice(book),
  ...laterThanRecord(book),
  ...missingParts(book),
];

/**
 * What the program itself wrote, perhaps before it knew a contradiction: it is as good as the book that it was copied from.
 *
 * @throws {Refusal} 422 where a whole book isn't one: an id or a revision twice, a state later than its record, a part that it doesn't have
 */
export function requireIntact(book: WholeBook): void {
  refuse(brokenIn(book));
}

/** @throws {Refusal} 422 where a whole book isn't intact, or a test in it can't be true of its rotor, plate or instruments */
export function requireConsistent(book: WholeBook): void {
  refuse([...brokenIn(book), ...contradictions(book)]);
}

/** In a record's history the same revision can't stand twice, the present one included. */
function twice({ records, revisions }: WholeBook): FieldError[] {
  return COLLECTION_NAMES.flatMap((name) => {
    const present = new Set<string>();
    const states = new Set<string>();
    return [
      ...records[name].flatMap((record, i) => {
        states.add(stateOf(record));
        return seen(present, record.id, `records.${name}.${i}.id`);
      }),
      ...revisions[name].flatMap((earlier, i) =>
        seen(states, stateOf(earlier), `revisions.${name}.${i}.revision`),
      ),
    ];
  });
}

const stateOf = ({ id, revision }: Stored<Data>): string => `${id} revision ${revision}`;

function seen(before: Set<string>, key: string, path: string): FieldError[] {
  if (before.has(key)) return [{ path, message: `Read "${key}" twice; allowed: each once.` }];
  before.add(key);
  return [];
}

/** What a record said before has a lower revision than it has now. */
function laterThanRecord({ records, revisions }: WholeBook): FieldError[] {
  return COLLECTION_NAMES.flatMap((name) => {
    const now = new Map(records[name].map(({ id, revision }) => [id, revision]));
    return revisions[name].flatMap(({ id, revision }, i) => {
      const present = now.get(id);
      if (present === undefined || revision <= present) return [];
      const message = `Read ${revision}, later than "${id}" is now; allowed: below its revision ${present}.`;
      return [{ path: `revisions.${name}.${i}.revision`, message }];
    });
  });
}

const idsOf = (states: readonly Stored<Data>[]): string[] => states.map(({ id }) => id);

/** A record points to what the book has, a state of the past to what the book has or once had. */
function missingParts({ records, revisions }: WholeBook): FieldError[] {
  const now = new Map(COLLECTION_NAMES.map((name) => [name, new Set(idsOf(records[name]))]));
  const ever = new Map(
    COLLECTION_NAMES.map((name) => [name, new Set([...idsOf(records[name]), ...idsOf(revisions[name])])]),
  );
  return COLLECTION_NAMES.flatMap((name) => [
    ...records[name].flatMap(({ data }, i) => dangling(name, data, now, `records.${name}.${i}.data`)),
    ...revisions[name].flatMap(({ data }, i) => dangling(name, data, ever, `revisions.${name}.${i}.data`)),
  ]);
}

type Ids = ReadonlyMap<CollectionName, ReadonlySet<string>>;

const dangling = (name: CollectionName, data: Data, known: Ids, place: string): FieldError[] =>
  referencesOf(name, data)
    .filter(({ collection, id }) => !known.get(collection)?.has(id))
    .map(({ path, collection, id }) => ({
      path: `${place}.${path}`,
      message: `Read "${id}"; allowed: the id of one of the archive's ${collection}.`,
    }));

function contradictions({ records }: WholeBook): FieldError[] {
  const parts = new Map(
    CONTRADICTABLE.map((name) => [name, new Map(records[name].map(({ id, data }) => [id, data]))]),
  );
  return records.tests.flatMap(({ data }, i) =>
    contradictionsIn(data, (collection, id) => parts.get(collection)?.get(id)).map(({ path, message }) => ({
      path: `records.tests.${i}.data.${path}`,
      message,
    })),
  );
}
