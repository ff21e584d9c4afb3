import { describe, expect, it } from "vitest";
import { swapped, swapsOfBuild } from "#shared/book/mass/buildSwaps.ts";
import { costOf, waysToHaveParts, withExchange } from "#shared/book/mass/exchange.ts";
import { ledgerOf } from "#shared/book/mass/ledger.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import type { Build } from "#shared/model/build.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds[0].data;
const { mass: _typed, ...vehicle } = crawler.vehicle;
const line = (
  name: string,
  mass: number,
  alternatives: readonly (readonly [string, number, number])[] = [],
) => ({
  name,
  group: "structure" as const,
  quantity: 1,
  mass,
  basis: "weighed" as const,
  alternatives: alternatives.map(([called, weight, price]) => ({
    name: called,
    mass: weight,
    price,
    leadTime: 0,
  })),
});
const build: Build = {
  ...crawler,
  vehicle,
  ledger: [
    line("Frame", 0.42),
    line("Cover", 0.09, [
      ["Thin cover", 0.06, 8],
      ["Foil cover", 0.03, 22],
    ]),
    line("Wiper", 0.07, [["Short wiper", 0.05, 2]]),
  ],
  exchanges: {
    motors: ["bell-22"],
    rotors: [{ rotor: "straight-seven", diameter: 0.05 }],
    packs: ["three-cell-850"],
    skirts: ["wide-land"],
  },
};

/** Whether a build has the wanted margin on every attitude it must hold, by the prediction itself. */
function holds(of: Build): boolean {
  const input = solvable(resolveBuild(book, of));
  if (!input) return false;
  const { attitudes, worst } = predictAny(input, [90, 153, 180]);
  const margins = [...attitudes.map(({ driving }) => driving.margin), worst.driving.margin];
  return margins.every((margin) => margin === null || margin >= of.targetMargin);
}

describe("swaps of a build with other parts of the book", () => {
  const swaps = swapsOfBuild(book, build, "price", 3);

  it("are the cheapest of every way to have parts and lines, each built and predicted by itself", () => {
    const cover = [null, 0, 1];
    const wiper = [null, 0];
    const found = waysToHaveParts(build)
      .flatMap((way) =>
        cover.flatMap((first) =>
          wiper.map((second) => {
            const changed = withExchange(book, build, way);
            const taken = [first, second].map((choice, i) =>
              choice === null ? null : build.ledger[i + 1].alternatives[choice],
            );
            const ledger = build.ledger.map((each, i) => {
              const alternative = i === 0 ? null : taken[i - 1];
              return alternative ? { ...each, mass: alternative.mass } : each;
            });
            const of = { ...changed, ledger };
            const price = taken.reduce((sum, each) => sum + (each?.price ?? 0), costOf(book, way).price);
            return { of, price, mass: ledgerOf(book, of).mass.value };
          }),
        ),
      )
      .filter(({ of }) => holds(of))
      .sort((a, b) => a.price - b.price || a.mass - b.mass);
    expect(holds(build)).toBe(false);
    expect(found.length).toBeGreaterThan(3);
    expect(swaps?.solutions.map(({ price }) => price)).toEqual(found.slice(0, 3).map(({ price }) => price));
    swaps?.solutions.forEach(({ mass }, i) => {
      expect(mass).toBeCloseToRelative(found[i].mass, 1e-12);
    });
  });

  it("made, give a build that holds and weighs what was said", () => {
    const [set] = swaps?.solutions ?? [];
    if (!swaps || !set) throw new Error("no set");
    const after = swapped(book, build, swaps, set);
    expect(holds(after)).toBe(true);
    expect(ledgerOf(book, after).mass.value).toBeCloseToRelative(set.mass, 1e-12);
  });

  it("leave out, by name, a part that nobody has weighed", () => {
    const motors = book.motors.map((motor) =>
      motor.id === "bell-22" ? { ...motor, data: { ...motor.data, mass: undefined } } : motor,
    );
    const answer = swapsOfBuild({ ...book, motors }, build, "price", 3);
    expect(answer?.notWeighed).toEqual(["Bell motor, 22 mm"]);
    expect(answer?.ways.some(({ motor }) => motor === "bell-22")).toBe(false);
  });
});

describe("withExchange", () => {
  it("moves a number typed for the whole by what the parts differ, and brings both errors", () => {
    const whole = { ...crawler, uncertainty: { "vehicle.mass": 0.003 } };
    const after = withExchange(book, whole, { motor: "bell-22" });
    // The demo's motors weigh 31 and 19 g, both weighed and without an uncertainty.
    expect(after.vehicle.mass).toBeCloseToRelative((crawler.vehicle.mass ?? 0) + 0.012, 1e-12);
    expect(after.uncertainty["vehicle.mass"]).toBe(0.003);
  });

  it("keeps what was set for parts that stay, and drops what was set for those that go", () => {
    const set = { ...crawler, overrides: { gap: 0.0004, series: 3, wheelFriction: 0.7 } };
    expect(withExchange(book, set, { skirt: "felt-ring" }).overrides).toEqual({
      series: 3,
      wheelFriction: 0.7,
    });
    expect(withExchange(book, set, { pack: "one-cell-650" }).overrides).toEqual({
      gap: 0.0004,
      wheelFriction: 0.7,
    });
  });
});
