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

/** Every way to have parts and lines, each built and predicted by itself: those that hold, cheapest first. */
function countedOut(of: Build) {
  const choices = of.ledger.map(({ alternatives }) => [null, ...alternatives]);
  const sets = choices.reduce<(Build["ledger"][number]["alternatives"][number] | null)[][]>(
    (all, each) => all.flatMap((set) => each.map((choice) => [...set, choice])),
    [[]],
  );
  return waysToHaveParts(book, of)
    .flatMap((way) =>
      sets.map((taken) => {
        const changed = withExchange(book, of, way);
        const ledger = of.ledger.map((each, i) => ({ ...each, mass: taken[i]?.mass ?? each.mass }));
        const made = { ...changed, ledger };
        const price = taken.reduce((sum, each) => sum + (each?.price ?? 0), costOf(book, way).price);
        return { of: made, way, price, mass: ledgerOf(book, made).mass.value };
      }),
    )
    .filter((each) => holds(each.of))
    .sort((a, b) => a.price - b.price || a.mass - b.mass);
}

describe("swaps of a build with other parts of the book", () => {
  const swaps = swapsOfBuild(book, build, "price", 3);

  it("are the cheapest of every way to have parts and lines, each built and predicted by itself", () => {
    const found = countedOut(build);
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

describe("swaps of a build in a duct, with open propellers among the rotors that may be tried", () => {
  // The scout of the demo, with a rotor in a duct on the felt ring.
  const scout = book.builds.find(({ id }) => id === "prop-scout")?.data ?? crawler;
  const { mass: _whole, ...own } = scout.vehicle;
  const ducted: Build = {
    ...scout,
    rotor: "straight-seven",
    diameter: 0.044,
    motor: "bell-18",
    skirt: "felt-ring",
    vehicle: own,
    ledger: [line("Frame", 0.06), line("Lamp", 0.02, [["Small lamp", 0.008, 5]])],
    exchanges: {
      motors: ["bell-22"],
      rotors: [
        { rotor: "pusher-three", diameter: 0.102 },
        { rotor: "pusher-three", diameter: 0.127 },
      ],
      packs: ["three-cell-850"],
      skirts: ["wide-land", null],
    },
  };
  const isOpen = (way: { readonly rotor?: string }) => way.rotor === "pusher-three";
  const ways = waysToHaveParts(book, ducted);
  const swaps = swapsOfBuild(book, ducted, "price", 20);
  const found = countedOut(ducted);

  it("try a propeller on each skirt and without one, a rotor in a duct never without", () => {
    // Motors 2 × packs 2 × (2 propellers × 3 skirts + 1 rotor × 2).
    expect(ways.length).toBe(2 * 2 * (2 * 3 + 2));
    expect(ways.filter(({ skirt }) => skirt === null).every(isOpen)).toBe(true);
  });

  it("are the cheapest of both kinds, each built and predicted by itself", () => {
    expect(found.some(({ way }) => isOpen(way))).toBe(true);
    expect(found.some(({ way }) => !isOpen(way))).toBe(true);
    expect(found.some(({ way }) => way.skirt === null)).toBe(true);
    const asked = Math.min(20, found.length);
    expect(swaps?.solutions.map(({ price }) => price)).toEqual(
      found.slice(0, asked).map(({ price }) => price),
    );
    swaps?.solutions.forEach(({ mass }, i) => {
      expect(mass).toBeCloseToRelative(found[i].mass, 1e-12);
    });
  });

  it("allow each the mass at which its tightest attitude just has the wanted margin by /predict", () => {
    for (const set of swaps?.solutions ?? []) {
      const made = swapped(book, ducted, swaps ?? { places: [], ways: [] }, set);
      const input = solvable(
        resolveBuild(book, { ...made, vehicle: { ...made.vehicle, mass: set.allowed } }),
      );
      const { attitudes, worst } = predictAny(input ?? Object.create(null), [153]);
      const margins = [...attitudes, { driving: worst.driving }].map(
        ({ driving }) => driving.margin ?? Infinity,
      );
      expect(Math.min(...margins)).toBeCloseToRelative(1.5, 1e-6);
    }
  });

  // The scout as it is stands on its wheels alone, and has too little thrust for the margin wanted.
  const open: Build = {
    ...scout,
    motor: "bell-18",
    vehicle: own,
    ledger: [line("Frame", 0.03), line("Lamp", 0.02, [["Small lamp", 0.008, 5]])],
    exchanges: {
      motors: ["bell-22"],
      packs: [],
      skirts: ["felt-ring"],
      rotors: [
        { rotor: "pusher-three", diameter: 0.102 },
        { rotor: "straight-seven", diameter: 0.042 },
      ],
    },
  };

  it("of a propeller's build take a rotor in a duct with a skirt alone, and are the cheapest there too", () => {
    const all = waysToHaveParts(book, open);
    expect(all.filter(({ rotor }) => rotor === "straight-seven").map(({ skirt }) => skirt)).toEqual([
      "felt-ring",
      "felt-ring",
    ]);
    const kept = countedOut(open);
    expect(holds(open)).toBe(false);
    expect(kept.some(({ way }) => way.rotor === "straight-seven")).toBe(true);
    expect(kept.some(({ way }) => way.rotor !== "straight-seven")).toBe(true);
    const best = swapsOfBuild(book, open, "price", 20)?.solutions ?? [];
    expect(best.map(({ price }) => price)).toEqual(kept.slice(0, 20).map(({ price }) => price));
    best.forEach(({ mass }, i) => {
      expect(mass).toBeCloseToRelative(kept[i].mass, 1e-12);
    });
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
