import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { testsOf } from "#shared/book/book.ts";
import { asInstrument, asPlate, inlined } from "#shared/book/named.ts";
import { curveReadings } from "#shared/book/readings/curve.ts";
import { tiltUncertainty } from "#shared/book/readings/friction.ts";
import { leakPoints } from "#shared/book/readings/leak.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { instrument } from "#shared/model/parts/instrument.ts";
import { plate } from "#shared/model/parts/plate.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();

const stored = <T>(id: string, data: T) => ({
  id,
  revision: 1,
  createdAt: "2026-01-01T00:00:00.000Z",
  updatedAt: "2026-01-01T00:00:00.000Z",
  data,
});

/** The demo with every plate and pressure sensor that a test describes named in its place. */
function namingBook(): Book {
  const own = demo.tests.find(({ data }) => data.kind === "curve")?.data;
  if (own?.kind !== "curve" || typeof own.plate !== "object") throw new Error("The demo has no plate.");
  const { pressure } = own.instruments;
  if (typeof pressure !== "object") throw new Error("The demo states no sensor.");
  const sensor = instrument.parse({ name: "Sensor", measures: "pressure", ...pressure });
  const tests = demo.tests.map((test) => {
    if (test.data.kind !== "curve" && test.data.kind !== "leak") return test;
    const data: BenchTest = {
      ...test.data,
      plate: "drilled-plate",
      instruments: { ...test.data.instruments, pressure: "sensor" },
    };
    return { ...test, data };
  });
  return { ...demo, instruments: [...demo.instruments, stored("sensor", sensor)], tests };
}

describe("tests that name their plate and their pressure sensor", () => {
  const book = namingBook();

  it("read the same as those that describe both, row by row", () => {
    for (const kind of ["curve", "leak"] as const) {
      const [named, described] = [testsOf(book, kind), testsOf(demo, kind)];
      expect(named).toHaveLength(described.length);
      expect(named.length).toBeGreaterThan(1);
      named.forEach(({ data }, i) => {
        const own = described[i].data;
        if (data.kind === "curve" && own.kind === "curve")
          expect(curveReadings(data, null)).toEqual(curveReadings(own, null));
        if (data.kind === "leak" && own.kind === "leak") expect(leakPoints(data)).toEqual(leakPoints(own));
      });
    }
  });

  it("give a build the same numbers", () => {
    for (const { data } of demo.builds)
      expect(resolveBuild(book, data).input).toEqual(resolveBuild(demo, data).input);
  });

  it("follow the plate when its own coefficient becomes known", () => {
    const calibrated = book.plates.map((each) => ({
      ...each,
      data: { ...each.data, dischargeCoefficient: 0.7 },
    }));
    const [before] = testsOf(book, "leak");
    const [after] = testsOf({ ...book, plates: calibrated }, "leak");
    const flows = (data: typeof before.data) => leakPoints(data).map(({ flow }) => flow);
    expect(flows(after.data).every((flow, i) => flow !== flows(before.data)[i])).toBe(true);
  });
});

describe("inlined, of a test that names nothing", () => {
  it("is the very same test", () => {
    const described = demo.tests.find(({ data }) => data.kind === "curve");
    if (!described) throw new Error("The demo has no curve test.");
    expect(inlined(demo, described.data)).toBe(described.data);
  });
});

describe("an instrument of the book", () => {
  // JCGM 100:2008 (GUM), F.2.2.1: an indication with steps of δx has the variance (δx)²/12, the standard uncertainty 0.29 δx.
  it("that states its resolution alone: has 0.29 of the step as its fixed part", () => {
    const scale = instrument.parse({ name: "Scale", measures: "load", resolution: { value: 10, unit: "N" } });
    const { percent, absolute } = asInstrument(scale);
    expect(percent).toBeUndefined();
    expect(absolute?.unit).toBe("N");
    expect(absolute?.value).toBeCloseTo(2.89, 2);
  });

  it("that states a fixed part and a resolution: adds them as squares, in SI", () => {
    const board = instrument.parse({
      name: "Board",
      measures: "angle",
      percent: 2,
      absolute: { value: 0.4, unit: "°" },
      resolution: { value: 1, unit: "°" },
    });
    const said = asInstrument(board);
    const degree = Math.PI / 180;
    expect(said.percent).toBe(2);
    expect(said.absolute?.value).toBeCloseToRelative(Math.sqrt(0.4 ** 2 + 1 / 12) * degree, 1e-12);
    const tests = testsOf(demo, "friction").map(({ data }) => ({ ...data, instruments: { angle: said } }));
    expect(tiltUncertainty(tests)).toBeGreaterThan(0.4 * degree);
  });

  it("that states nothing: says nothing of a reading", () => {
    expect(asInstrument(instrument.parse({ name: "Old one", measures: "flow" }))).toEqual({});
  });
});

describe("a plate of the book", () => {
  it("has its thickness at every hole, and its own coefficient where it was calibrated", () => {
    const holes = [
      { diameter: 0.0041, count: 3 },
      { diameter: 0.01, count: 5, edge: "rounded" },
    ];
    const bare = asPlate(plate.parse({ name: "P", thickness: 0.0032, holes }));
    expect(bare.holes).toEqual([
      {
        diameter: { value: 4.1, unit: "mm" },
        thickness: { value: 3.2, unit: "mm" },
        count: 3,
        edge: "sharp",
      },
      {
        diameter: { value: 10, unit: "mm" },
        thickness: { value: 3.2, unit: "mm" },
        count: 5,
        edge: "rounded",
      },
    ]);
    const own = asPlate(plate.parse({ name: "P", thickness: 0.0032, holes, dischargeCoefficient: 0.64 }));
    expect(own.holes.map(({ dischargeCoefficient }) => dischargeCoefficient)).toEqual([0.64, 0.64]);
  });
});
