import { byCollection, type CollectionName } from "../../shared/model/collections.ts";
import { COLLECTIONS } from "../../shared/model/schemas.ts";
import { isDated } from "../../shared/model/traits.ts";
import { type Cursor, type PagePlace, placeOf, writeCursor } from "./cursor.ts";
import type { Database, Statement } from "./database.ts";
import { Joined } from "./joined.ts";

/** Filters of a list: of one kind, records that use every one of some parts, text that the name must contain, out of use or not. */
export interface ListQuery {
  readonly limit: number;
  readonly cursor?: Cursor;
  readonly kind?: string;
  readonly uses?: readonly Used[];
  readonly text?: string;
  /** true: only what is out of use; false: only what is in use */
  readonly withdrawn?: boolean;
}

interface Used {
  readonly collection: CollectionName;
  readonly id: string;
}

/** A page of a list. */
export interface Page {
  /** its records as JSON, with commas between them */
  readonly items: Uint8Array;
  readonly next: Cursor | null;
}

/** A page ends where its records are larger than this all together, however many were asked for [byte]. */
const MOST_BYTES = 4_000_000;

/** The row of a record, and how long its data are [byte]. */
type Found = readonly [number, number];

/** Every list runs along these, within its collection. */
const ORDER = ["day", "created_at", "id"] as const;

/** What has a day stands newest first, everything else as it was entered. */
const NEWEST_FIRST = byCollection((name) => isDated(COLLECTIONS[name]));

/** Which filters a list has. */
export interface Filters {
  readonly kind: boolean;
  /** of how many parts */
  readonly uses: number;
  readonly text: boolean;
  readonly withdrawn?: boolean;
  /** behind a place, which every later page is; the first is not compared with any */
  readonly behind?: boolean;
}

const USES_PART = "part_collection = ? AND part = ?";

/**
 * @returns the statement of one page, whose rows an index gives in order:
 * that of the first part used, else that of the kind, else that of the collection. Bound are the parts, the collection, the kind, the place, the text, the number of rows.
 */
export function listSql(
  collection: CollectionName,
  { kind, uses, text, withdrawn, behind }: Filters,
): string {
  const along = uses > 0 ? "u" : "r";
  const from =
    uses > 0
      ? "uses AS u CROSS JOIN records AS r ON r.collection = u.collection AND r.id = u.id"
      : "records AS r";
  const more = `EXISTS (SELECT 1 FROM uses AS v WHERE v.collection = r.collection AND v.id = r.id AND v.${USES_PART.replace("AND ", "AND v.")})`;
  const place = ORDER.map((column) => `${along}.${column}`);
  const where = [
    ...(uses > 0 ? [`u.${USES_PART.replace("AND ", "AND u.")}`] : []),
    ...Array.from({ length: Math.max(0, uses - 1) }, () => more),
    `${along}.collection = ?`,
    ...(kind ? ["r.kind = ?"] : []),
    ...(behind ? [`(${place.join(", ")}) ${NEWEST_FIRST[collection] ? "<" : ">"} (?, ?, ?)`] : []),
    ...(text ? ["r.name LIKE ? ESCAPE '\\'"] : []),
    ...(withdrawn === undefined ? [] : [`r.withdrawn ${withdrawn ? "<>" : "="} ''`]),
  ];
  const order = place.map((column) => `${column} ${NEWEST_FIRST[collection] ? "DESC" : "ASC"}`).join(", ");
  return `SELECT r.rowid, octet_length(r.body) FROM ${from} WHERE ${where.join(" AND ")} ORDER BY ${order} LIMIT ?`;
}

const likeOf = (text: string): string => `%${text.replace(/[\\%_]/g, "\\$&")}%`;

/** The pages of one collection's list. */
export class Listing {
  readonly #statements = new Map<string, Statement>();
  readonly #joined: Joined;
  readonly #place: Statement;
  /** nothing is written between the look for the rows and the look into them */
  readonly #page: (found: Statement, bound: readonly unknown[], limit: number) => Page;

  constructor(
    readonly database: Database,
    readonly collection: CollectionName,
  ) {
    this.#joined = new Joined(database);
    this.#place = database.prepare(`SELECT ${ORDER.join(", ")} FROM records WHERE rowid = ?`).raw();
    this.#page = database.transaction((found, bound, limit) => {
      // One row more than asked for says whether another page follows.
      const all = found.all(...bound, limit + 1) as Found[];
      const rows = rowsThatFit(all, limit);
      const next = rows.length < all.length ? this.#placeOf(rows[rows.length - 1]) : null;
      return { items: this.#joined.records(rows), next };
    });
  }

  page({ limit, cursor, kind, uses = [], text, withdrawn }: ListQuery): Page {
    const place = cursor ? placeOf(cursor, ORDER.length) : [];
    const bound = [
      ...uses.flatMap((used) => [used.collection, used.id]),
      this.collection,
      ...(kind ? [kind] : []),
      ...place,
      ...(text ? [likeOf(text)] : []),
    ];
    const filters = {
      kind: Boolean(kind),
      uses: uses.length,
      text: Boolean(text),
      withdrawn,
      behind: Boolean(cursor),
    };
    return this.#page(this.#statement(filters), bound, limit);
  }

  #placeOf(row: number): Cursor {
    return writeCursor(this.#place.get(row) as PagePlace);
  }

  #statement(filters: Filters): Statement {
    const sql = listSql(this.collection, filters);
    const known = this.#statements.get(sql);
    if (known) return known;
    const statement = this.database.prepare(sql).raw();
    this.#statements.set(sql, statement);
    return statement;
  }
}

/** @returns the rows of one page: at least one where there is any */
function rowsThatFit(found: readonly Found[], limit: number): number[] {
  const rows: number[] = [];
  let length = 0;
  for (const [row, bytes] of found) {
    if (rows.length > 0 && (rows.length === limit || length + bytes > MOST_BYTES)) break;
    rows.push(row);
    length += bytes;
  }
  return rows;
}
