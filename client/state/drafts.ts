import { type ShownUnits, shownAs, unitsShown } from "../../shared/units/showing.ts";
import { tried } from "./browserStore.ts";
import { notice } from "./notice.ts";

/** What was typed and not saved yet, as a form keeps it. */
export interface Kept<T> {
  readonly content: T;
  /** the record's revision that was typed over; null for a new record, or where there is none */
  readonly revision: number | null;
  /** when it was typed last [ms since 1970] */
  readonly at: number;
}

/** A draft as it lies in the store. */
interface Stored extends Kept<unknown> {
  /** in which a bare number was meant; not there in drafts of a version that didn't keep them */
  readonly units?: ShownUnits;
}

/** What a form can show. */
export interface DraftKind<T> {
  readonly isContent: (content: unknown) => content is T;
  /** the same with the units written out that are meant now, so that they are meant in another book of units as well */
  readonly settled: (content: T) => T;
}

/** Another number where what forms keep changes its shape: older drafts are then forgotten. */
const START = "gripcurve draft 2 ";
const DAY = 24 * 3600 * 1000;
/** A draft older than this is of another piece of work. Judgement [days]. */
const KEPT_FOR = 14;

const keyOf = (address: string): string => START + address;

function parsed(text: string | null): Stored | null {
  if (text === null) return null;
  try {
    const kept: unknown = JSON.parse(text);
    const isKept = typeof kept === "object" && kept !== null && "content" in kept && "at" in kept;
    return isKept ? (kept as Stored) : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

/** What this page wrote and neither saved nor discarded, by key. */
const unsaved = new Map<string, string>();

/** @returns what the browser keeps, or this page alone where that is newer: its store may be full */
function newest(address: string): Stored | null {
  const kept = parsed(tried(() => localStorage.getItem(keyOf(address)), null));
  const own = parsed(unsaved.get(keyOf(address)) ?? null);
  return own && !(kept && kept.at >= own.at) ? own : kept;
}

const isSame = (a: ShownUnits, b: ShownUnits): boolean =>
  Object.keys({ ...a, ...b }).every((key) => a[key as keyof ShownUnits] === b[key as keyof ShownUnits]);

/**
 * What was typed at an address and not saved, also before the browser was closed. Typed while other units were shown, it
 * comes with those written out: a bare 12 that meant millimetres stays 12 mm.
 *
 * @param address - of the form: "tests/new/pull", "motors/bell-18"
 * @param kind - of what the form can show
 * @returns null where nothing was kept, or for so many days that it is of another piece of work
 */
export function keptDraft<T>(
  address: string,
  { isContent, settled }: DraftKind<T>,
  now = Date.now(),
): Kept<T> | null {
  const kept = newest(address);
  if (!kept || !(now - kept.at < KEPT_FOR * DAY) || !isContent(kept.content)) return null;
  const { content, revision, at, units = unitsShown() } = kept;
  const isMeantNow = isSame(units, unitsShown());
  return { content: isMeantNow ? content : shownAs(units, () => settled(content)), revision, at };
}

const NOT_KEPT =
  "This browser doesn't keep what you type: its storage is full or switched off. Save before you reload or close the page.";

/** false once a draft was refused, until one is kept again */
let isKept = true;

function write(key: string, text: string): void {
  const wasKept = isKept;
  isKept = tried(() => {
    localStorage.setItem(key, text);
    return true;
  }, false);
  if (wasKept && !isKept) notice.value = NOT_KEPT;
}

/** Keeps what is typed until it is saved; a full store keeps the last that fitted, and the page says so. */
export function keepDraft(
  address: string,
  content: unknown,
  revision: number | null,
  now = Date.now(),
): void {
  const kept: Stored = { content, revision, at: now, units: unitsShown() };
  const text = JSON.stringify(kept);
  unsaved.set(keyOf(address), text);
  write(keyOf(address), text);
}

/** It was saved, or discarded. */
export function forgetDraft(address: string): void {
  unsaved.delete(keyOf(address));
  tried(() => localStorage.removeItem(keyOf(address)), undefined);
}

/** The same form may be open in another tab: when that one saves or discards its own, what was typed here is kept on. */
export function keepBesideOthers(): void {
  addEventListener("storage", (event) => {
    const { key, newValue } = event as StorageEvent;
    const text = key === null ? undefined : unsaved.get(key);
    if (key !== null && text !== undefined && newValue === null) write(key, text);
  });
}

/** Drops drafts that are too old to be shown again. */
export function forgetOldDrafts(now = Date.now()): void {
  tried(() => {
    const keys = Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? "");
    for (const key of keys) {
      if (!key.startsWith(START)) continue;
      const kept = parsed(localStorage.getItem(key));
      if (!kept || !(now - kept.at < KEPT_FOR * DAY)) localStorage.removeItem(key);
    }
  }, undefined);
}
