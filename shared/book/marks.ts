import type { Build } from "../model/build.ts";
import { EFFICIENCY_ABOVE_ONE } from "../physics/point/efficiencyNotes.ts";
import type { AnyPrediction } from "../physics/predictAny.ts";
import { formatQuantity } from "../units/format.ts";
import { type Book, findById } from "./book.ts";
import type { PackBasis } from "./packBasis.ts";
import { type Resolved, solvable } from "./resolve/resolved.ts";
import { calibrationNotes } from "./verdictCase.ts";

/** A build made into numbers and solved, as far as it could be. */
export interface Solved {
  readonly build: Build;
  readonly resolved: Resolved | null;
  readonly prediction: AnyPrediction | null;
}

/** Words for what does not rest on a measurement alone, or cannot be. */
export type BuildMarkWord =
  | "contradicted"
  | "efficiency above 1"
  | "extrapolated"
  | "estimated"
  | "scaled"
  | "two-point"
  | "stated";

/** Something in a build that does not rest on a measurement alone. */
export interface BuildMark {
  readonly word: BuildMarkWord;
  /** what is so marked, as a list says it */
  readonly what: string;
}

/** Words that a verdict itself carries; what a maker states is named among what it rests on. */
const OF_A_VERDICT: readonly BuildMarkWord[] = [
  "contradicted",
  "efficiency above 1",
  "extrapolated",
  "estimated",
  "scaled",
  "two-point",
];

/** "cell.resistance" and "noLoadCurrent" as a reader says them. */
function fieldWords(path: string): string {
  return path
    .replace(/\./g, " ")
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase();
}

function rotorMarks({ resolved, build }: Solved): BuildMark[] {
  const basis = resolved?.rotor?.basis;
  const marks: BuildMark[] = [];
  if (basis === "estimated")
    marks.push({ word: "estimated", what: "rotor curve, from its geometry, ±\u202f30\u202f%" });
  if (basis === "two-point")
    marks.push({ word: "two-point", what: "rotor curve, from blocked and open readings alone" });
  const from = resolved?.scaledFrom ?? null;
  if (from !== null) {
    const [own, tested] = [build.diameter, from].map((size) => formatQuantity(size, "length"));
    marks.push({
      word: "scaled",
      what: `${resolved?.thrust ? "propeller" : "rotor"} of ${own}, from ${tested}`,
    });
  }
  return marks;
}

function statedMarks(book: Book, { resolved, build }: Solved): BuildMark[] {
  const motor = findById(book.motors, build.motor)?.data.name ?? "";
  const share = (resolved && solvable(resolved))?.vehicle.skirtShare ?? 0;
  const stated: [boolean, string][] = [
    [resolved?.motor?.basis === "stated", `motor ${motor}, by its maker`],
    [resolved?.friction?.basis === "stated", "friction of the wheels"],
    [resolved?.skirtFriction?.basis === "stated" && share > 0, "friction of the skirt"],
  ];
  return stated.flatMap(([is, what]) => (is ? [{ word: "stated" as const, what }] : []));
}

/** The estimated figures that the prediction asks for no longer: a calibration or a handle stands in their place. */
function replaced({ resolved }: Solved, collection: string): readonly string[] {
  const gap = resolved?.gap.basis === "calibrated" || resolved?.gap.basis === "what-if" || !!resolved?.leak;
  const friction = resolved?.friction && resolved.friction.basis !== "stated";
  if (collection === "skirts") return gap ? ["gap"] : [];
  if (collection === "packs") return testedCell(resolved?.pack ?? null);
  return collection === "surfaces" && friction ? ["wheelFriction"] : [];
}

/** Figures of a pack that its discharge tests gave. */
function testedCell(pack: PackBasis | null): readonly string[] {
  if (!pack?.fit) return [];
  const { resistanceFrom, capacityFrom } = pack.fit;
  return [
    "cell.curve",
    ...(resistanceFrom === "known" ? [] : ["cell.resistance"]),
    ...(capacityFrom === "known" ? [] : ["cell.capacity"]),
  ];
}

/** A published curve in the place of the pack's own. */
function chemistryMarks(book: Book, { resolved, build }: Solved): BuildMark[] {
  const table = resolved?.pack?.chemistry;
  if (!table) return [];
  const name = findById(book.packs, build.pack)?.data.name ?? "";
  return [{ word: "estimated", what: `voltage by charge of ${name}, a published curve of ${table.name}` }];
}

/** Fields of the parts in use that are guesses or makers' figures. */
function estimatedMarks(book: Book, solved: Solved): BuildMark[] {
  const { build } = solved;
  const parts = [
    { of: "rotors", data: findById(book.rotors, build.rotor)?.data },
    { of: "motors", data: findById(book.motors, build.motor)?.data },
    { of: "packs", data: findById(book.packs, build.pack)?.data },
    { of: "skirts", data: findById(book.skirts, build.skirt)?.data },
    { of: "surfaces", data: findById(book.surfaces, build.surface)?.data },
  ];
  return parts.flatMap(({ of, data }) => {
    const gone = replaced(solved, of);
    const fields = (data?.estimated ?? []).filter((path) => !gone.includes(path));
    if (!data || fields.length === 0) return [];
    return [{ word: "estimated" as const, what: `${data.name}: ${fields.map(fieldWords).join(", ")}` }];
  });
}

/** Tests that speak against each other or the model: no verdict should be read without them. */
function contradictedMarks({ resolved }: Solved): BuildMark[] {
  const notes = resolved ? calibrationNotes(resolved, "conflict") : [];
  return notes.map(({ message }) => ({ word: "contradicted", what: message }));
}

/** A curve that gives out more than it takes in: no figure on it can be trusted. */
function impossibleMarks(book: Book, { resolved, build }: Solved): BuildMark[] {
  const notes = resolved?.rotor?.fit?.warnings ?? [];
  const name = findById(book.rotors, build.rotor)?.data.name ?? "";
  return notes
    .filter(({ code }) => code === EFFICIENCY_ABOVE_ONE)
    .map(({ message }) => ({ word: "efficiency above 1", what: `${name}: ${message}` }));
}

/** The operating point beyond what was tested; of a curve estimated whole, that word says it. */
function beyondMarks({ prediction, resolved }: Solved): BuildMark[] {
  if (!prediction?.point?.extrapolated || resolved?.rotor?.basis === "estimated") return [];
  const tested = resolved?.propeller ? "speeds" : "flows";
  return [{ word: "extrapolated", what: `operating point, beyond the tested ${tested}` }];
}

/** @returns all in a build that is contradicted, extrapolated, estimated, scaled, known by two points or stated, in a list's order */
export function marksOf(book: Book, solved: Solved): BuildMark[] {
  return [
    ...contradictedMarks(solved),
    ...impossibleMarks(book, solved),
    ...rotorMarks(solved),
    ...beyondMarks(solved),
    ...statedMarks(book, solved),
    ...chemistryMarks(book, solved),
    ...estimatedMarks(book, solved),
  ];
}

/** @returns the words that a build's verdict carries, once each, with all that stands behind each */
export function verdictMarks(book: Book, solved: Solved): BuildMark[] {
  const marks = marksOf(book, solved);
  return OF_A_VERDICT.flatMap((word) => {
    const what = marks.filter((mark) => mark.word === word).map((mark) => mark.what);
    return what.length > 0 ? [{ word, what: what.join("; ") }] : [];
  });
}
