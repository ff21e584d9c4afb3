import type { CollectionName } from "../../shared/model/record.ts";
import { type Cursor, type PagePlace, placeOf, writeCursor } from "./cursor.ts";
import type { Database, Statement } from "./database.ts";
import { type Data, ROW_COLUMNS, type Row, storedOf } from "./rows.ts";

/** Filters of a list: equal to a look-up column, and text that the name must contain. */
export interface ListQuery {
  readonly limit: number;
  readonly cursor?: Cursor;
  readonly equal?: Readonly<Record<string, string>>;
  readonly text?: string;
}

export interface Page {
  readonly items: readonly ReturnType<typeof storedOf>[];
  readonly next: string | null;
}

interface Order {
  readonly columns: readonly string[];
  readonly direction: "ASC" | "DESC";
  /** before every row there can be */
  readonly start: PagePlace;
}

/** Newest test first; everything else as it was entered. */
const NEWEST_FIRST: Order = {
  columns: ["date", "created_at", "id"],
  direction: "DESC",
  start: ["~", "~", "~"],
};
const AS_ENTERED: Order = { columns: ["created_at", "id"], direction: "ASC", start: ["", ""] };

const orderOf = (collection: CollectionName): Order => (collection === "tests" ? NEWEST_FIRST : AS_ENTERED);

/** @returns the statement of one page; the place in the order is always bound, so that an index gives the rows in order */
export function listSql(collection: CollectionName, equal: readonly string[], text: boolean): string {
  const { columns, direction } = orderOf(collection);
  const after = `(${columns.join(", ")}) ${direction === "ASC" ? ">" : "<"} (${columns.map(() => "?").join(", ")})`;
  const where = [
    ...equal.map((column) => `${column} = ?`),
    after,
    ...(text ? ["name LIKE ? ESCAPE '\\'"] : []),
  ];
  const order = columns.map((column) => `${column} ${direction}`).join(", ");
  return `SELECT ${ROW_COLUMNS} FROM ${collection} WHERE ${where.join(" AND ")} ORDER BY ${order} LIMIT ?`;
}

const likeOf = (text: string): string => `%${text.replace(/[\\%_]/g, "\\$&")}%`;

/** The pages of one collection's list. */
export class Listing {
  readonly #statements = new Map<string, Statement>();

  constructor(
    readonly database: Database,
    readonly collection: CollectionName,
  ) {}

  page({ limit, cursor, equal = {}, text }: ListQuery): Page {
    const columns = Object.keys(equal).sort();
    const order = orderOf(this.collection);
    const place = cursor ? placeOf(cursor, order.start.length) : order.start;
    const bound = [...columns.map((column) => equal[column]), ...place, ...(text ? [likeOf(text)] : [])];
    // One row more than asked for says whether another page follows.
    const rows = this.#statement(columns, Boolean(text)).all(...bound, limit + 1) as Row[];
    const items = rows.slice(0, limit).map(storedOf);
    const last = items.at(-1);
    return { items, next: rows.length > limit && last ? writeCursor(placeIn(order, last)) : null };
  }

  #statement(columns: readonly string[], text: boolean): Statement {
    const sql = listSql(this.collection, columns, text);
    const known = this.#statements.get(sql);
    if (known) return known;
    const statement = this.database.prepare(sql);
    this.#statements.set(sql, statement);
    return statement;
  }
}

function placeIn(order: Order, record: ReturnType<typeof storedOf>): PagePlace {
  const known: Readonly<Record<string, string>> = {
    date: dateOf(record.data),
    created_at: record.createdAt,
    id: record.id,
  };
  return order.columns.map((column) => known[column]);
}

const dateOf = (data: Data): string => (typeof data.date === "string" ? data.date : "");
