import type { Stored } from "../../shared/model/record.ts";
import { withdrawnOf } from "../../shared/model/withdrawn.ts";

/** A row as the tables keep it, without the columns that only serve look-ups. */
export interface Row {
  readonly id: string;
  readonly revision: number;
  readonly created_at: string;
  readonly updated_at: string;
  readonly body: string;
}

/** The columns of a {@link Row}, of a table or of its alias. */
export const rowColumns = (of = ""): string =>
  ["id", "revision", "created_at", "updated_at", "body"].map((column) => of + column).join(", ");

/** Record data before its schema is known: what all collections have in common. */
export type Data = Readonly<Record<string, unknown>>;

export const storedOf = (row: Row): Stored<Data> => ({
  id: row.id,
  revision: row.revision,
  createdAt: row.created_at,
  updatedAt: row.updated_at,
  data: JSON.parse(row.body) as Data,
});

/**
 * A record as JSON, put together by the database: what it said is kept as that, and goes out as it is.
 *
 * @param of - alias of its table, with the dot
 * @param updatedAt - column that has the moment of its last change
 * @returns the SQL of a text
 */
export const recordJson = (of = "", updatedAt = "updated_at"): string =>
  `'{"id":' || json_quote(${of}id) || ',"revision":' || ${of}revision || ',"createdAt":' || json_quote(${of}created_at) ||
   ',"updatedAt":' || json_quote(${of}${updatedAt}) || ',"data":' || ${of}body || '}'`;

/** @returns the SQL of the same as bytes: a page of them never becomes text in between, which takes ten times as long */
export const recordBytes = (of = "", updatedAt = "updated_at"): string =>
  `CAST(${recordJson(of, updatedAt)} AS BLOB)`;

const textOr = (value: unknown, otherwise: string): string => (typeof value === "string" ? value : otherwise);

/** @returns what a list shows and searches: a part's name, a test's title */
export const nameOf = (data: Data): string => textOr(data.name, textOr(data.title, ""));

/** @returns the day that a list is ordered by, empty where it is ordered by entry */
export const dayOf = (data: Data): string => textOr(data.date, "");

/** Columns that serve look-ups alone, filled from the record's data. */
export const LOOKUP = ["name", "kind", "day", "withdrawn"] as const;

/** @returns the values of the columns of {@link LOOKUP} */
export const lookupValues = (data: Data): [string, string, string, string] => [
  nameOf(data),
  textOr(data.kind, ""),
  dayOf(data),
  withdrawnOf(data) ?? "",
];
