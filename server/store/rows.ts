import { type CollectionName, REFERENCE_KEYS, type Stored } from "../../shared/model/record.ts";

/** A row as the tables keep it, without the columns that only serve look-ups. */
export interface Row {
  readonly id: string;
  readonly revision: number;
  readonly created_at: string;
  readonly updated_at: string;
  readonly body: string;
}

export const ROW_COLUMNS = "id, revision, created_at, updated_at, body";

/** Record data before its schema is known: what all collections have in common. */
export type Data = Readonly<Record<string, unknown>>;

export const storedOf = (row: Row): Stored<Data> => ({
  id: row.id,
  revision: row.revision,
  createdAt: row.created_at,
  updatedAt: row.updated_at,
  data: JSON.parse(row.body) as Data,
});

const REFERENCES = Object.keys(REFERENCE_KEYS);

/** Columns of a collection that serve look-ups alone; each is filled from the record's data. */
export function lookupColumns(collection: CollectionName): readonly string[] {
  if (collection === "tests") return ["name", "kind", "date", ...REFERENCES];
  if (collection === "builds") return ["name", ...REFERENCES];
  return ["name"];
}

const textOr = (value: unknown, otherwise: string): string => (typeof value === "string" ? value : otherwise);

/** @returns what a list shows and searches: a part's name, a test's title */
export const nameOf = (data: Data): string => textOr(data.name, textOr(data.title, ""));

/** @returns the values of {@link lookupColumns}, in their order */
export function lookupValues(collection: CollectionName, data: Data): (string | null)[] {
  return lookupColumns(collection).map((column) =>
    column === "name" ? nameOf(data) : typeof data[column] === "string" ? data[column] : null,
  );
}
