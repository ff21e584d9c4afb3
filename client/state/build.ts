import { batch, computed, signal } from "@preact/signals";
import type { Book } from "../../shared/book/book.ts";
import type { StoredOf } from "../../shared/model/record.ts";
import { groupOf } from "../../shared/model/screens.ts";
import { offered } from "../../shared/model/withdrawn.ts";
import { go, href, type Route, route, type ViewName } from "../app/router.ts";
import { currentBook } from "./book.ts";
import { tried } from "./browserStore.ts";
import { type Changes, type LeftOut, leftOutOf } from "./handles.ts";
import { type PartTried, triedFromQuery, triedToQuery } from "./partsTried.ts";

const LAST_BUILD = "gripcurve-build";

/** @returns whether a view shows one build; such views share the build on the screen and what is tried against it */
export function showsBuild(view: ViewName): boolean {
  return view !== "missing" && groupOf(view) === "build";
}

/** @returns the build that a book is shown with at an address: the address's, else the last one looked at, else the book's first */
export function shownIn(book: Book | null, { view, id }: Route = route.value): StoredOf<"builds"> | null {
  const builds = book?.builds ?? [];
  const wanted = showsBuild(view) ? id : null;
  if (wanted !== null) return builds.find((build) => build.id === wanted) ?? null;
  const last = tried(() => sessionStorage.getItem(LAST_BUILD), null);
  return builds.find((build) => build.id === last) ?? offered(builds, null)[0] ?? builds[0] ?? null;
}

/** The stored build on the screen. */
export const current = computed(() => shownIn(currentBook.value));

/** true where the address names a build that the book does not have */
export const unknownBuild = computed(
  () =>
    currentBook.value !== null &&
    showsBuild(route.value.view) &&
    route.value.id !== null &&
    current.value === null,
);

/** What is tried against the build, SI. */
export const changes = signal<Changes>({});

/** What the address asked for that can't be; until something is changed. */
export const leftOut = signal<readonly LeftOut[]>([]);

/** Parts that the address asked for and the book does not have; until something is changed. */
export const unknownParts = signal<readonly PartTried[]>([]);

/** false while a handle is held */
export const settled = signal(true);

/** false while a handle is moved: true again once it stands for a moment, or is let go */
export const resting = signal(true);

/** So long a handle stands until it counts as resting [ms]. */
const A_MOMENT = 150;
let rest: ReturnType<typeof setTimeout> | undefined;

/** Other builds laid over the picture. */
export const overlayIds = signal<readonly string[]>([]);

/** Takes what the address carries: the changes and the builds laid over. */
export function fromAddress(): void {
  const { query } = route.peek();
  const asked = triedFromQuery(query, currentBook.peek());
  changes.value = asked.tried;
  unknownParts.value = asked.unknown;
  leftOut.value = leftOutOf(query);
  overlayIds.value = (query.get("over") ?? "").split(",").filter(Boolean);
  const shown = current.peek();
  if (shown) tried(() => sessionStorage.setItem(LAST_BUILD, shown.id), undefined);
}

/** Writes the changes and the builds laid over into the address, so that a link or a reload brings them back. */
export function toAddress(): void {
  const build = current.peek();
  if (!build) return;
  const over = overlayIds.peek();
  const query = { ...triedToQuery(changes.peek()), ...(over.length > 0 ? { over: over.join(",") } : {}) };
  const address = href(route.peek().view, build.id, query);
  if (address !== location.pathname + location.search) go(address, { replace: true });
}

/** Tries something while a handle is held: nothing is written, no curve glides. */
export function tryOut(next: Changes): void {
  clearTimeout(rest);
  rest = setTimeout(() => {
    resting.value = true;
  }, A_MOMENT);
  batch(() => {
    settled.value = false;
    resting.value = false;
    changes.value = next;
  });
}

/** The handle is let go. */
export function settle(next: Changes = changes.peek()): void {
  clearTimeout(rest);
  batch(() => {
    settled.value = true;
    resting.value = true;
    changes.value = next;
    leftOut.value = [];
    unknownParts.value = [];
  });
  toAddress();
}
