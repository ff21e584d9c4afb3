import { COLLECTION_WORDS } from "../../../shared/model/collections.ts";
import type { TestKind } from "../../../shared/model/tests/index.ts";
import { withdrawnOf } from "../../../shared/model/withdrawn.ts";
import type { Waiting } from "../../state/waiting/list.ts";
import { KIND_WORDS } from "../../ui/kindWords.ts";
import { dayText } from "../../ui/moment.ts";
import { href } from "../router.ts";

/** HTTP 404, Not Found: what is corrected was deleted. */
const DELETED = 404;

const isKind = (kind: unknown): kind is TestKind => typeof kind === "string" && kind in KIND_WORDS;

const kindOf = ({ collection, data: { kind } }: Waiting): string =>
  collection === "tests" && isKind(kind) ? KIND_WORDS[kind] : COLLECTION_WORDS[collection];

/** @returns what waits, as a sentence names it: "pull test of 30 Nov 2026", "rotor Swept nine" */
export function nameOfWaiting(item: Waiting): string {
  const { name, title, date } = item.data;
  const called = name || title;
  if (called) return `${kindOf(item)} “${called}”`;
  return typeof date === "string" ? `${kindOf(item)} of ${dayText(date)}` : kindOf(item);
}

/** @returns what is to be done, as a list names it: "Correction of the rotor Swept nine" */
export function whatWaits(item: Waiting): string {
  const name = nameOfWaiting(item);
  if (item.deletes) return `Deletion of the ${name}`;
  if (!item.before) return `${name.charAt(0).toUpperCase()}${name.slice(1)}`;
  const why = withdrawnOf(item.data);
  const out = item.collection === "tests" ? "struck out" : "retired";
  return `Correction of the ${name}${why === null ? "" : `, ${out}: ${why}`}`;
}

/** @returns whether it can only be saved as a new record: the one that it corrects is gone */
export const isOfDeleted = ({ before, refusal }: Waiting): boolean =>
  before !== null && refusal?.status === DELETED;

/** @returns the address of the form in which it is corrected */
export function addressOfWaiting(item: Waiting): string {
  const { collection, before, data, key } = item;
  const view = collection === "tests" ? "bench" : "parts";
  const folder = collection === "tests" ? "" : `${collection}/`;
  if (before && !isOfDeleted(item)) return href(view, folder + before.id);
  return href(view, collection === "tests" ? `new/${data.kind}` : `${folder}new`, { waiting: key });
}
