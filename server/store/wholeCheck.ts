import type { FieldError } from "../../shared/model/api/errors.ts";
import {
  COLLECTION_NAMES,
  type CollectionName,
  referencesOf,
  type Stored,
} from "../../shared/model/record.ts";
import { Refusal } from "../refusal.ts";
import type { Data } from "./rows.ts";
import type { Book } from "./wholeBook.ts";

/** @throws {Refusal} 422 where a whole book contradicts itself: an id twice, a part that it doesn't have */
export function requireConsistent(book: Book): void {
  const fields = [...twice(book), ...missingParts(book)];
  if (fields.length === 0) return;
  const [first] = fields;
  throw new Refusal(422, "inconsistent", `${first.path}: ${first.message}`, fields);
}

/** In a record's history the same revision can't stand twice, the present one included. */
function twice({ records, revisions }: Book): FieldError[] {
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

function missingParts({ records }: Book): FieldError[] {
  const ids = new Map<CollectionName, Set<string>>(
    COLLECTION_NAMES.map((name) => [name, new Set(records[name].map(({ id }) => id))]),
  );
  return (["tests", "builds"] as const).flatMap((name) =>
    records[name].flatMap(({ data }, i) =>
      referencesOf(data)
        .filter((reference) => !ids.get(reference.collection)?.has(reference.id))
        .map(({ key, collection, id }) => ({
          path: `records.${name}.${i}.data.${key}`,
          message: `Read "${id}"; allowed: the id of one of the archive's ${collection}.`,
        })),
    ),
  );
}
