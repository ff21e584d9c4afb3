import { COLLECTION_NAMES, type CollectionName } from "../../../../shared/model/collections.ts";
import type { Stored } from "../../../../shared/model/record.ts";
import type { ShownUnits } from "../../../../shared/units/showing.ts";

type States = Readonly<Partial<Record<CollectionName, readonly Stored<unknown>[]>>>;

interface DeletedAt {
  readonly collection: CollectionName;
  readonly id: string;
  readonly deletedAt: string;
}

/** A whole book as its archive says it; the server judges what is in its records. */
export interface Archive {
  readonly format: "gripcurve-bench";
  readonly version: number;
  readonly exportedAt: string;
  readonly demo: boolean;
  readonly records: States;
  readonly revisions: States;
  readonly deletions?: readonly DeletedAt[];
  /** what was predicted for tests before they counted */
  readonly predictions?: readonly { readonly test: string }[];
  readonly units?: ShownUnits;
}

/** A record that both books have, each with another content. */
export interface Conflict {
  /** collection and id */
  readonly key: string;
  readonly collection: CollectionName;
  readonly mine: Stored<unknown>;
  readonly theirs: Stored<unknown>;
}

export interface Comparison {
  /** records that only the archive has */
  readonly added: number;
  /** records that are the same in both */
  readonly same: number;
  /** records that only the book has */
  readonly own: number;
  readonly conflicts: readonly Conflict[];
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const isRecord = (value: unknown): boolean =>
  isObject(value) &&
  typeof value.id === "string" &&
  typeof value.revision === "number" &&
  isObject(value.data);

/** @returns the archive that a file's text is; in words why it is none */
export function readArchive(text: string): Archive | { readonly message: string } {
  const none = (why: string) => ({
    message: `This is no archive of Gripcurve: ${why}. Choose a file that "Save the archive" made, gripcurve-….json.`,
  });
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return none("its text is no JSON, or ends too early");
    throw error;
  }
  if (!isObject(read) || read.format !== "gripcurve-bench") return none('it doesn\'t say "gripcurve-bench"');
  if (!isObject(read.records) || !isObject(read.revisions)) return none("its records are missing");
  const lists = [...Object.values(read.records), ...Object.values(read.revisions)];
  if (!lists.every(Array.isArray)) return none("its records are no lists");
  if (!lists.flat().every(isRecord)) return none("a record in it has no identifier, revision or content");
  return read as unknown as Archive;
}

const of = (states: States, name: CollectionName): readonly Stored<unknown>[] => states[name] ?? [];
const byId = (list: readonly Stored<unknown>[]) => new Map(list.map((record) => [record.id, record]));

/** Text of a value with its keys in order, so that equal contents are equal texts. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    isObject(inner) ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1))) : inner,
  );
}

const keyOf = (collection: CollectionName, id: string): string => `${collection}/${id}`;

/** @returns how many records an archive has, by collection */
export function countsOf({ records }: Archive): (readonly [CollectionName, number])[] {
  return COLLECTION_NAMES.map((name) => [name, of(records, name).length] as const).filter(
    ([, count]) => count > 0,
  );
}

/** Lays an archive beside the book: what is new, what is the same, and what differs under one id. */
export function compare(mine: Archive, theirs: Archive): Comparison {
  let [added, same, own] = [0, 0, 0];
  const conflicts: Conflict[] = [];
  for (const collection of COLLECTION_NAMES) {
    const known = byId(of(mine.records, collection));
    const given = of(theirs.records, collection);
    own += [...known.keys()].filter((id) => !given.some((record) => record.id === id)).length;
    for (const record of given) {
      const before = known.get(record.id);
      if (!before) added++;
      else if (canonical(before.data) === canonical(record.data)) same++;
      else conflicts.push({ key: keyOf(collection, record.id), collection, mine: before, theirs: record });
    }
  }
  return { added, same, own, conflicts };
}

/** The latest that a book says of an id, among what it holds and what it held. */
const latest = (id: string, ...lists: readonly (readonly Stored<unknown>[])[]): number =>
  Math.max(0, ...lists.flat().flatMap((state) => (state.id === id ? [state.revision] : [])));

/** One collection of both books: nothing of the own book is lost, whatever gives way stays among the revisions. */
function mergeOne(mine: Archive, theirs: Archive, name: CollectionName, takesTheirs: ReadonlySet<string>) {
  const records = new Map(of(mine.records, name).map((record) => [record.id, record]));
  const own = of(mine.revisions, name);
  const revisions = [...own];
  const held = new Set(own.map(({ id }) => id));
  for (const record of of(theirs.records, name)) {
    const { id } = record;
    const before = records.get(id);
    if (before && !takesTheirs.has(keyOf(name, id))) continue;
    const past = of(theirs.revisions, name).filter((state) => state.id === id);
    const known = before || held.has(id);
    if (before) revisions.push(before);
    else if (!known) revisions.push(...past);
    const revision = known ? latest(id, own, before ? [before] : []) + 1 : record.revision;
    records.set(id, { ...record, createdAt: before?.createdAt ?? record.createdAt, revision });
  }
  return { records: [...records.values()], revisions };
}

/**
 * One book of two: what both have alike stands once, what only one has is kept, and of what differs that which is chosen.
 *
 * @param takesTheirs - keys of the conflicts in which the archive's record takes the place of the book's; the book's stays among its revisions
 */
export function merge(mine: Archive, theirs: Archive, takesTheirs: ReadonlySet<string>): Archive {
  const merged = COLLECTION_NAMES.map((name) => [name, mergeOne(mine, theirs, name, takesTheirs)] as const);
  const records = Object.fromEntries(merged.map(([name, each]) => [name, each.records]));
  const there = (name: CollectionName, id: string) =>
    (records[name] as readonly Stored<unknown>[]).some((record) => record.id === id);
  return {
    ...mine,
    demo: mine.demo && theirs.demo,
    records,
    revisions: Object.fromEntries(merged.map(([name, each]) => [name, each.revisions])),
    deletions: (mine.deletions ?? []).filter(({ collection, id }) => !there(collection, id)),
    predictions: predictionsOf(mine, theirs, takesTheirs),
  };
}

/** A prediction goes with the test that it was made for. */
function predictionsOf(mine: Archive, theirs: Archive, takesTheirs: ReadonlySet<string>) {
  const [held, given] = [mine, theirs].map(
    ({ records }) => new Set(of(records, "tests").map(({ id }) => id)),
  );
  const isTheirs = (test: string) =>
    given.has(test) && (!held.has(test) || takesTheirs.has(keyOf("tests", test)));
  return [
    ...(mine.predictions ?? []).filter(({ test }) => !isTheirs(test)),
    ...(theirs.predictions ?? []).filter(({ test }) => isTheirs(test)),
  ];
}

/** One value in which two records differ. */
export interface Differing {
  readonly path: string;
  readonly mine: string;
  readonly theirs: string;
}

const textOf = (value: unknown): string => {
  if (value === undefined || value === null) return "";
  if (isObject(value) && "value" in value && "unit" in value) return `${value.value} ${value.unit}`;
  return typeof value === "string" ? value : JSON.stringify(value);
};

/** @returns the values in which two contents differ, by their paths, rows of a list by their number from 1 */
export function differing(mine: unknown, theirs: unknown, path = ""): Differing[] {
  if (canonical(mine ?? null) === canonical(theirs ?? null)) return [];
  const isLeaf = (value: unknown) =>
    typeof value !== "object" || value === null || (isObject(value) && "unit" in value);
  if (isLeaf(mine) || isLeaf(theirs)) return [{ path, mine: textOf(mine), theirs: textOf(theirs) }];
  const [a, b] = [mine, theirs] as readonly Readonly<Record<string, unknown>>[];
  const isList = Array.isArray(mine);
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].flatMap((key) => {
    const name = isList ? String(Number(key) + 1) : key;
    return differing(a[key], b[key], path === "" ? name : `${path} ${name}`);
  });
}
