import { effect } from "@preact/signals";
import { COLLECTION_NAMES } from "../../shared/model/collections.ts";
import { currentBook } from "../state/book.ts";
import { current, showsBuild } from "../state/build.ts";
import { KIND_WORDS } from "../ui/kindWords.ts";
import { RECORD } from "../views/curves/address.ts";
import { type Route, route } from "./router.ts";
import { VIEWS } from "./views.ts";

/** Screens of the Bench that are no test. */
const BENCH_SCREENS: Readonly<Record<string, string>> = {
  import: "import from CSV",
  archive: "archive and backup",
  units: "units",
  devices: "devices",
  ...Object.fromEntries(Object.entries(KIND_WORDS).map(([kind, words]) => [`new/${kind}`, `new ${words}`])),
};

function benchSubject(id: string): string | null {
  const test = currentBook.value?.tests.find((each) => each.id === id)?.data;
  return BENCH_SCREENS[id] ?? (test ? test.title || KIND_WORDS[test.kind] : null);
}

/** "rotors/swept-nine" → the rotor's name. */
function recordSubject(id: string): string | null {
  if (id === RECORD) return "predicted and measured";
  const [name, record] = id.split("/");
  const collection = COLLECTION_NAMES.find((each) => each === name);
  const found = collection && currentBook.value?.[collection].find((each) => each.id === record)?.data;
  return found && "name" in found ? found.name : null;
}

/** What a view shows, by name: the build, the part, the test; null where the view itself says all. */
function subjectOf({ view, id }: Route): string | null {
  if (showsBuild(view)) return current.value?.data.name ?? null;
  if (id === null) return null;
  return view === "bench" ? benchSubject(id) : recordSubject(id);
}

/** @returns the title of the page: "Match: Pane crawler, second rotor · Gripcurve" */
export function pageTitle(at: Route): string {
  const { label } = VIEWS[at.view];
  const subject = subjectOf(at);
  return `${subject === null ? label : `${label}: ${subject}`} · Gripcurve`;
}

/** Keeps the page's title to what is shown. */
export function startTitle(): void {
  effect(() => {
    document.title = pageTitle(route.value);
  });
}
