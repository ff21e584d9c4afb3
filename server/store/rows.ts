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

/** @returns a record as JSON: what it said is kept as that, and goes out as it is */
export function textOf({ id, revision, created_at, updated_at, body }: Row): string {
  const around = { id, revision, createdAt: created_at, updatedAt: updated_at };
  return `${JSON.stringify(around).slice(0, -1)},"data":${body}}`;
}

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
