import type { PackBasis } from "../../shared/book/packBasis.ts";
import { type Book, solvable } from "../../shared/book/resolve.ts";
import { calibrationNotes } from "../../shared/book/verdictCase.ts";
import { formatQuantity } from "../../shared/units/format.ts";
import type { Outcome } from "../state/outcome.ts";
import type { MarkWord } from "./Mark.tsx";

/** Something in a build that does not rest on a measurement alone. */
export interface BuildMark {
  readonly word: MarkWord;
  /** what is so marked, as a list says it */
  readonly what: string;
}

/** Words that a verdict itself carries; what a maker states is named among what it rests on. */
const OF_A_VERDICT: readonly MarkWord[] = [
  "contradicted",
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

function rotorMarks({ resolved, build }: Outcome): BuildMark[] {
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

function statedMarks(book: Book, { resolved, build }: Outcome): BuildMark[] {
  const motor = book.motors.find((each) => each.id === build.motor)?.data.name ?? "";
  const share = (resolved && solvable(resolved))?.vehicle.skirtShare ?? 0;
  const stated: [boolean, string][] = [
    [resolved?.motor?.basis === "stated", `motor ${motor}, by its maker`],
    [resolved?.friction?.basis === "stated", "friction of the wheels"],
    [resolved?.skirtFriction?.basis === "stated" && share > 0, "friction of the skirt"],
  ];
  return stated.flatMap(([is, what]) => (is ? [{ word: "stated" as const, what }] : []));
}

/** The estimated figures that the prediction asks for no longer: a calibration or a handle stands in their place. */
function replaced({ resolved }: Outcome, collection: string): readonly string[] {
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
function chemistryMarks(book: Book, { resolved, build }: Outcome): BuildMark[] {
  const table = resolved?.pack?.chemistry;
  if (!table) return [];
  const name = book.packs.find((each) => each.id === build.pack)?.data.name ?? "";
  return [{ word: "estimated", what: `voltage by charge of ${name}, a published curve of ${table.name}` }];
}

/** Fields of the parts in use that are guesses or makers' figures. */
function estimatedMarks(book: Book, outcome: Outcome): BuildMark[] {
  const { build } = outcome;
  const parts = [
    { of: "rotors", data: book.rotors.find((each) => each.id === build.rotor)?.data },
    { of: "motors", data: book.motors.find((each) => each.id === build.motor)?.data },
    { of: "packs", data: book.packs.find((each) => each.id === build.pack)?.data },
    { of: "skirts", data: book.skirts.find((each) => each.id === build.skirt)?.data },
    { of: "surfaces", data: book.surfaces.find((each) => each.id === build.surface)?.data },
  ];
  return parts.flatMap(({ of, data }) => {
    const gone = replaced(outcome, of);
    const fields = (data?.estimated ?? []).filter((path) => !gone.includes(path));
    if (!data || fields.length === 0) return [];
    return [{ word: "estimated" as const, what: `${data.name}: ${fields.map(fieldWords).join(", ")}` }];
  });
}

/** Tests that speak against each other or the model: no verdict should be read without them. */
function contradictedMarks({ resolved }: Outcome): BuildMark[] {
  const notes = resolved ? calibrationNotes(resolved, "conflict") : [];
  return notes.map(({ message }) => ({ word: "contradicted", what: message }));
}

/** The operating point beyond what was tested; of a curve estimated whole, that word says it. */
function beyondMarks({ prediction, resolved }: Outcome): BuildMark[] {
  if (!prediction?.point?.extrapolated || resolved?.rotor?.basis === "estimated") return [];
  const tested = resolved?.propeller ? "speeds" : "flows";
  return [{ word: "extrapolated", what: `operating point, beyond the tested ${tested}` }];
}

/** @returns all in a build that is contradicted, extrapolated, estimated, scaled, known by two points or stated, in a list's order */
export function marksOf(book: Book, outcome: Outcome): BuildMark[] {
  return [
    ...contradictedMarks(outcome),
    ...rotorMarks(outcome),
    ...beyondMarks(outcome),
    ...statedMarks(book, outcome),
    ...chemistryMarks(book, outcome),
    ...estimatedMarks(book, outcome),
  ];
}

/** @returns the words that a build's verdict carries, once each, with all that stands behind each */
export function verdictMarks(book: Book, outcome: Outcome): BuildMark[] {
  const marks = marksOf(book, outcome);
  return OF_A_VERDICT.flatMap((word) => {
    const what = marks.filter((mark) => mark.word === word).map((mark) => mark.what);
    return what.length > 0 ? [{ word, what: what.join("; ") }] : [];
  });
}
