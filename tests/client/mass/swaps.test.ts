import { describe, expect, it } from "vitest";
import { headroomOf } from "#client/views/mass/headroom.ts";
import { type Answered, replyTo } from "#client/views/mass/swaps/answer.ts";
import { swapQuestion, withoutNeedless } from "#client/views/mass/swaps/question.ts";
import { setFigures, settingsText, shortfallText, swapTexts } from "#client/views/mass/swaps/swapWords.ts";
import { wayText } from "#client/views/match/ways/wayWords.ts";
import { swapped } from "#shared/book/mass/buildSwaps.ts";
import { ledgerOf } from "#shared/book/mass/ledger.ts";
import type { PartSwapSet } from "#shared/decide/swaps/partSwaps.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds[0].data;
const plain = (text: string) => text.replaceAll(/\u202f/g, " ");
/** The demo's crawler, so heavy that the overhang is 20 g short. */
const limit = headroomOf(book, crawler).allowed.at(-1)?.atTarget ?? 0;
const heavy: Build = { ...crawler, vehicle: { ...crawler.vehicle, mass: limit + 0.02 } };

function answerFor(build: Build): Answered {
  const question = swapQuestion(book, build, "price");
  const reply = question && replyTo(question);
  if (!reply || "problem" in reply) throw new Error(reply?.problem ?? "Nothing can be swapped.");
  return reply.answered;
}

const { swaps } = answerFor(heavy);
const sets = withoutNeedless(swaps.solutions, swaps.ways);

describe("swaps of a stored build", () => {
  it("are asked of the lines that have alternatives, against the tightest attitude", () => {
    expect(swaps.places.map((at) => heavy.ledger[at].name)).toEqual(["Wheel with tyre", "Camera"]);
    expect(sets[0].allowed).toBeCloseToRelative(limit, 1e-12);
  });

  it("of 20 g too much: the wheels save 22 g and are the cheapest way, with the camera's case off for nothing; its board, dearer, saves 31", () => {
    const texts = sets.map((set) => swapTexts(book, heavy, swaps, set).map(plain));
    expect(texts.slice(0, 3)).toEqual([
      ["Foam wheel for Wheel with tyre, saves 22 g", "Camera without its case for Camera, saves 17 g"],
      ["Foam wheel for Wheel with tyre, saves 22 g"],
      ["Board camera for Camera, saves 31 g"],
    ]);
    expect(plain(setFigures(sets[0]))).toMatch(
      /^588 g of 607 g allowed; 12 to spend; there in 6 days; > 99.9 % chance/,
    );
  });

  it("made, give a build that weighs what was said, a number for the whole with it", () => {
    const [set] = sets;
    const after = swapped(book, heavy, swaps, set);
    expect(after.vehicle.mass).toBeCloseToRelative(set.mass, 1e-12);
    expect(after.uncertainty["vehicle.mass"]).toBe(set.uncertainty);
    expect(after.ledger[1]).toMatchObject({ name: "Foam wheel", quantity: 4, mass: 0.008, alternatives: [] });
    expect(headroomOf(book, after).mass).toBeLessThanOrEqual(limit);
  });

  it("made where the sum counts, weigh what was said as well, with its uncertainty", () => {
    const { mass: _whole, ...vehicle } = heavy.vehicle;
    const ballast = { ...crawler.ledger[2], name: "Ballast", mass: 0.09, alternatives: [] };
    const summed: Build = { ...heavy, vehicle, ledger: [...heavy.ledger, ballast] };
    const answered = answerFor(summed);
    const [set]: PartSwapSet[] = withoutNeedless(answered.swaps.solutions, answered.swaps.ways);
    const { mass } = ledgerOf(book, swapped(book, summed, answered.swaps, set));
    expect(mass.value).toBeCloseToRelative(set.mass, 1e-12);
    expect(mass.uncertainty).toBeCloseToRelative(set.uncertainty, 1e-9);
  });

  it("that are not enough say what is still missing, and which settings alone would bring it", () => {
    const hopeless = answerFor({ ...heavy, vehicle: { ...heavy.vehicle, mass: 0.9 } });
    expect(hopeless.swaps.solutions).toEqual([]);
    // 900 g less 22 g of the wheels and 31 g of the camera.
    expect(plain(shortfallText(hopeless.swaps.nearest))).toMatch(
      /^No set of these swaps is light enough\. The nearest comes to 847 g, 240 g more than the 607 g allowed\.$/,
    );
    const texts = hopeless.settings.map((way) => plain(wayText(way)));
    expect(plain(settingsText(texts))).toMatch(
      /^With that set, one of these alone brings the rest: .*Gap ≤ 0\.\d+ mm/,
    );
  });

  it("are none where no line has an alternative and no part may be exchanged", () => {
    const bare = { ...heavy, ledger: heavy.ledger.map((line) => ({ ...line, alternatives: [] })) };
    expect(swapQuestion(book, bare, "price")).toBeNull();
    const exchanges = { ...bare.exchanges, motors: [bare.motor] };
    expect(swapQuestion(book, { ...bare, exchanges }, "price")).toBeNull();
  });
});

describe("swaps with parts of the book", () => {
  const exchanges = { ...heavy.exchanges, motors: ["bell-22"], packs: ["three-cell-850"] };
  const wide: Build = { ...heavy, exchanges };
  const answered = answerFor(wide);

  it("name the part and what its mass changes, and take nothing along but what the build and they rest on", () => {
    const question = swapQuestion(book, wide, "price");
    expect(question?.book.builds).toEqual([]);
    expect(question?.book.motors.map(({ id }) => id)).toContain("bell-22");
    expect(question?.book.motors.map(({ id }) => id)).not.toContain("brushed-20");
    const other = answered.swaps.solutions.find(
      ({ parts }) => answered.swaps.ways[parts].motor !== undefined,
    );
    const { parts } = answered.swaps.nearest;
    const set = other ?? {
      ...answered.swaps.nearest,
      parts: answered.swaps.ways.findIndex(({ motor }) => motor),
    };
    expect(parts).toBeGreaterThanOrEqual(0);
    expect(swapTexts(book, wide, answered.swaps, set).map(plain)[0]).toBe(
      "Bell motor, 22 mm for Bell motor, 18 mm, adds 12 g",
    );
  });
});

describe("swaps between a rotor in a duct and an open propeller", () => {
  const scout = book.builds.find(({ id }) => id === "prop-scout")?.data ?? crawler;
  const texts = (build: Build, isIt: (way: { rotor?: string; skirt?: string | null }) => boolean) => {
    const { swaps: found } = answerFor(build);
    const set = found.solutions.find(({ parts }) => isIt(found.ways[parts])) ?? expect.fail("no such set");
    return swapTexts(book, build, found, set).map(plain);
  };

  it("say what comes and what is left off, the skirt too", () => {
    const rotors = [{ rotor: "pusher-three", diameter: 0.102 }];
    const exchanges = { ...scout.exchanges, rotors, skirts: [null] };
    const ducted: Build = {
      ...scout,
      rotor: "straight-seven",
      diameter: 0.042,
      skirt: "felt-ring",
      targetMargin: 1,
      exchanges,
    };
    expect(texts(ducted, ({ skirt }) => skirt === null)).toEqual([
      expect.stringMatching(
        /^Pusher, three blades, 102(\.0)? mm for Straight seven, 42(\.0)? mm, (saves|adds) /,
      ),
      expect.stringMatching(/^without Felt ring.*, saves /),
    ]);
  });

  it("say what a rotor in a duct takes along: its skirt", () => {
    const rotors = [{ rotor: "straight-seven", diameter: 0.042 }];
    const open: Build = { ...scout, exchanges: { ...scout.exchanges, rotors, skirts: ["felt-ring"] } };
    expect(texts(open, ({ rotor }) => rotor === "straight-seven").at(-1)).toMatch(/^with Felt ring.*, adds /);
  });
});
