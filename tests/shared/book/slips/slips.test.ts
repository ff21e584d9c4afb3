import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { slipsOfPart } from "#shared/book/slips/ofPart.ts";
import { slipsOfTest } from "#shared/book/slips/ofTest.ts";
import { COLLECTION_NAMES } from "#shared/model/collections.ts";
import { type BenchTest, benchTest } from "#shared/model/tests/index.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
type Kind = BenchTest["kind"];

/** A demo test of a kind with one row changed, as it would be logged anew. */
function changed(kind: Kind, change: object, head: object = {}): BenchTest {
  const test = book.tests.find(({ data }) => data.kind === kind)?.data;
  if (!test) throw new Error(`The demo has no ${kind} test.`);
  const [first, ...rest] = test.rows;
  return benchTest.parse({ ...test, ...head, rows: [{ ...first, ...change }, ...rest] });
}

const q = (value: number, unit: string) => ({ value, unit });
const paths = (test: BenchTest, of: Book = book) => slipsOfTest(of, test).map(({ path }) => path);

describe("the demo's own records", () => {
  it("ask nothing, part by part, build by build, test by test", () => {
    for (const name of COLLECTION_NAMES)
      if (name !== "tests")
        for (const { data } of book[name]) expect(slipsOfPart(book, name, data), data.name).toEqual([]);
    for (const { id, data } of book.tests) expect(slipsOfTest(book, data), id).toEqual([]);
  });
});

describe("a reading ten or a hundred times off", () => {
  it.each([
    ["pull", "a load in kilograms for grams", { held: q(900, "kg"), letGo: q(950, "kg") }, ["held", "letGo"]],
    ["pull", "a load a tenth of it", { held: q(30, "g"), letGo: q(42, "g") }, ["letGo"]],
    ["pull", "a point forgotten in a voltage", { voltage: q(39.2, "V") }, ["voltage"]],
    ["pull", "a shim in centimetres", { gap: q(5, "cm") }, ["gap"]],
    ["curve", "a digit too many in a speed", { speed: q(240_000, "rpm") }, ["speed"]],
    ["curve", "a pressure in mmH2O for Pa", { pressure: q(9000, "mmH2O") }, ["pressure"]],
    ["motor", "a point forgotten in a current", { current: q(310, "A") }, ["current"]],
    ["friction", "radians typed as degrees", { held: null, slid: q(0.7, "°") }, ["slid"]],
    ["thrust", "a thrust in N for g", { thrust: q(170, "N") }, ["thrust"]],
    ["discharge", "amps for milliamps", { current: q(900, "A") }, ["current"]],
    ["discharge", "a charge in Ah for mAh", { charge: q(120, "Ah") }, ["charge"]],
  ] as const)("in a %s test, %s: is asked about", (kind, _what, change, keys) => {
    expect(paths(changed(kind, change))).toEqual(expect.arrayContaining(keys.map((key) => `rows.0.${key}`)));
  });

  it("in a pull: says what was predicted, in the unit where it reads well, and asks for the unit", () => {
    const slips = slipsOfTest(book, changed("pull", { held: q(90_000, "g"), letGo: null }));
    expect(slips[0].why).toMatch(/^\d{3,4}\u202fg beside the rig was predicted\. Is the unit right\?$/);
  });

  it("in a row that is set aside: is not asked about", () => {
    const change = { held: q(900, "kg"), letGo: null, setAside: "slipped" };
    expect(paths(changed("pull", change))).toEqual([]);
  });

  it.each([
    ["a held load far below, which is only a lower bound", { held: q(9, "g"), letGo: null }],
    ["a pull that let go at once", { held: q(0, "g"), letGo: null }],
  ])("%s: is not asked about", (_what, change) => {
    expect(paths(changed("pull", change))).toEqual([]);
  });

  it("in the set-up: a diameter far from the rotor's sizes, a charge of half a percent, a rig of a ton", () => {
    const head = { diameter: q(420, "mm"), charge: q(0.6, "%"), rigMass: q(90, "kg") };
    expect(paths(changed("pull", {}, head))).toEqual(
      expect.arrayContaining(["diameter", "charge", "rigMass"]),
    );
  });
});

describe("a leak's flow beside the open gap, P·h·√(2Δp/ρ)", () => {
  const leak = (flow: object) =>
    benchTest.parse({
      ...changed("leak", {}),
      flowFrom: "known-flow",
      plate: undefined,
      rows: [{ pressure: q(200, "Pa"), flow }],
    });

  it.each([
    ["a thousand times too much", q(900, "L/s")],
    ["a thousandth", q(0.9, "cm^3/s")],
  ])("%s: is asked about", (_what, flow) => {
    expect(paths(leak(flow))).toEqual(["rows.0.flow"]);
  });

  it("of its size: is not", () => {
    expect(paths(leak(q(1.2, "L/s")))).toEqual([]);
  });
});

describe("a motor's current", () => {
  const rows = (loaded: number, voltage: number) => [
    { voltage: q(3.9, "V"), current: q(0.3, "A"), speed: q(28_000, "rpm"), noLoad: true },
    { voltage: q(voltage, "V"), current: q(loaded, "A"), speed: q(25_000, "rpm") },
  ];
  const test = (loaded: number, voltage: number) =>
    benchTest.parse({ ...changed("motor", {}), resistance: undefined, rows: rows(loaded, voltage) });

  it("under load and below that without load at the same voltage: is asked about", () => {
    const slips = slipsOfTest(book, test(0.2, 3.9)).filter(({ path }) => path === "rows.1.current");
    expect(slips).toEqual([
      { path: "rows.1.current", why: "0.300\u202fA was read without load at the same voltage. Is it right?" },
    ]);
  });

  it.each([
    ["above it", 0.4, 3.9],
    ["below it, at another voltage", 0.2, 2],
  ])("under load and %s: is not", (_what, loaded, voltage) => {
    expect(paths(test(loaded, voltage))).not.toContain("rows.1.current");
  });
});

describe("a part's number that is far from any such part", () => {
  it.each([
    [
      "rotors",
      { sizes: [{ diameter: 0.38 }] },
      ["sizes.0.diameter"],
      /^usually 8\.00.mm to 250.mm\. Is the unit right\?$/,
    ],
    ["motors", { kv: 420_000 }, ["kv"], /^usually 100.rpm\/V to 60.000.rpm\/V/],
    ["packs", { mass: 38 }, ["mass"], /^usually/],
    ["skirts", { gap: 0.06 }, ["gap"], /^usually/],
    ["surfaces", { wheelFriction: 0.008 }, ["wheelFriction"], /Is it right\?$/],
  ] as const)("among the %s: is asked about", (name, change, found, why) => {
    const data = { ...book[name][0].data, ...change };
    const slips = slipsOfPart(book, name, data as never);
    expect(slips.map(({ path }) => path)).toEqual(found);
    expect(slips[0].why).toMatch(why);
  });

  it("a build's diameter far from its rotor's sizes, and a vehicle lighter than its parts: are asked about", () => {
    const [build] = book.builds;
    const light = { ...build.data, diameter: 0.19, vehicle: { ...build.data.vehicle, mass: 0.02 } };
    const slips = slipsOfPart(book, "builds", light);
    expect(slips.map(({ path }) => path)).toEqual(["diameter", "vehicle.mass"]);
    expect(slips[0].why).toMatch(/^the rotor's sizes are /);
    expect(slips[1].why).toMatch(/^the parts in it weigh .* together\. Is the unit right\?$/);
  });
});
