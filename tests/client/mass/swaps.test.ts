import { describe, expect, it } from "vitest";
import { headroomOf } from "#client/views/mass/headroom.ts";
import { replyTo } from "#client/views/mass/swaps/answer.ts";
import {
  type SwapQuestion,
  swapped,
  swapQuestion,
  withoutNeedless,
} from "#client/views/mass/swaps/question.ts";
import { setFigures, shortfallText, swapTexts } from "#client/views/mass/swaps/swapWords.ts";
import { ledgerOf } from "#shared/book/mass/ledger.ts";
import type { SwapSet } from "#shared/decide/swaps/swaps.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds[0].data;
const plain = (text: string) => text.replaceAll(/\u202f/g, " ");
/** The demo's crawler, so heavy that the overhang is 20 g short. */
const limit = headroomOf(book, crawler).allowed.at(-1)?.atTarget ?? 0;
const heavy: Build = { ...crawler, vehicle: { ...crawler.vehicle, mass: limit + 0.02 } };

function asked(build: Build): SwapQuestion {
  const question = swapQuestion(headroomOf(book, build), build, "price");
  if (!question) throw new Error("Nothing can be swapped.");
  return question;
}

function setsOf(build: Build): readonly SwapSet[] {
  const reply = replyTo(asked(build));
  if ("problem" in reply) throw new Error(reply.problem);
  return withoutNeedless(reply.answered.solutions);
}

describe("swaps of a stored build", () => {
  it("are asked of the lines that have alternatives, all else as one, against the tightest attitude", () => {
    const { lines, allowed, places } = asked(heavy);
    expect(places.map((at) => heavy.ledger[at].name)).toEqual(["Wheel with tyre", "Camera"]);
    expect(allowed).toBeCloseToRelative(limit, 1e-12);
    const total = lines.reduce((sum, { quantity, mass }) => sum + quantity * mass, 0);
    expect(total).toBeCloseToRelative(heavy.vehicle.mass ?? 0, 1e-12);
  });

  it("of 20 g too much: the wheels save 22 g and are the cheapest way, with the camera's case off for nothing; its board, dearer, saves 31", () => {
    const sets = setsOf(heavy);
    const texts = sets.map((set) => swapTexts(heavy, asked(heavy), set).map(plain));
    expect(texts.slice(0, 3)).toEqual([
      ["Foam wheel for Wheel with tyre, saves 22 g", "Camera without its case for Camera, saves 17 g"],
      ["Foam wheel for Wheel with tyre, saves 22 g"],
      ["Board camera for Camera, saves 31 g"],
    ]);
    expect(plain(setFigures(sets[0]))).toMatch(/^588 g; 12 to spend; there in 6 days; \d\d.* % chance/);
  });

  it("made, give a build that weighs what was said, a number for the whole with it", () => {
    const [set] = setsOf(heavy);
    const after = swapped(heavy, asked(heavy), set);
    expect(after.vehicle.mass).toBeCloseToRelative(set.mass, 1e-12);
    expect(after.uncertainty["vehicle.mass"]).toBe(set.uncertainty);
    expect(after.ledger[1]).toMatchObject({ name: "Foam wheel", quantity: 4, mass: 0.008, alternatives: [] });
    expect(headroomOf(book, after).mass).toBeLessThanOrEqual(limit);
  });

  it("made where the sum counts, weigh what was said as well, with its uncertainty", () => {
    const { mass: _whole, ...vehicle } = heavy.vehicle;
    const ballast = { ...crawler.ledger[2], name: "Ballast", mass: 0.09, alternatives: [] };
    const summed: Build = { ...heavy, vehicle, ledger: [...heavy.ledger, ballast] };
    const [set] = setsOf(summed);
    const { mass } = ledgerOf(book, swapped(summed, asked(summed), set));
    expect(mass.value).toBeCloseToRelative(set.mass, 1e-12);
    expect(mass.uncertainty).toBeCloseToRelative(set.uncertainty, 1e-9);
  });

  it("that are not enough say what is still missing", () => {
    const hopeless = { ...heavy, vehicle: { ...heavy.vehicle, mass: 0.9 } };
    const reply = replyTo(asked(hopeless));
    if ("problem" in reply) throw new Error(reply.problem);
    expect(reply.answered.reachable).toBe(false);
    // 900 g less 22 g of the wheels and 31 g of the camera.
    expect(plain(shortfallText(asked(hopeless).allowed, reply.answered.lightest))).toMatch(
      /^No set of these swaps is light enough\. The lightest comes to 847 g, 240 g more than the 607 g allowed\.$/,
    );
  });

  it("are none where no line has an alternative", () => {
    const bare = { ...heavy, ledger: heavy.ledger.map((line) => ({ ...line, alternatives: [] })) };
    expect(swapQuestion(headroomOf(book, bare), bare, "price")).toBeNull();
  });
});
