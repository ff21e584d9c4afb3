import { describe, expect, it } from "vitest";
import { bandsFor, plainResidualSd, sureness, weightNear } from "#client/views/curves/rotor/bands.ts";
import { contributions, familyRms } from "#client/views/curves/rotor/contributions.ts";
import { type RotorFamily, readingsInUse, rotorFamily } from "#client/views/curves/rotor/family.ts";
import { groupPlot } from "#client/views/curves/rotor/groupPlot.ts";
import { groupsOf } from "#client/views/curves/rotor/groups.ts";
import { missingInUnits, nextReadings } from "#client/views/curves/rotor/nextReadings.ts";
import { familyOffsets, offsetSentences } from "#client/views/curves/rotor/offsets.ts";
import { curvePlot, residualPlot } from "#client/views/curves/rotor/plots.ts";
import { unitsOf } from "#client/views/curves/rotor/shown.ts";
import { withRowSetAside } from "#client/views/curves/setAside.ts";
import type { Book } from "#shared/book/book.ts";
import { evaluatePolynomial } from "#shared/numeric/polynomial.ts";
import { DEFAULT_WEATHER } from "#shared/physics/air.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const ROTOR = "swept-nine";

function familyIn(changedBook: Book): RotorFamily {
  const family = rotorFamily(changedBook, ROTOR);
  if (!family) throw new Error("the demo has no such rotor");
  return family;
}

const family = familyIn(book);
const curveTests = book.tests.filter(({ data }) => data.kind === "curve" && data.rotor === ROTOR);

function changed(id: string, change: (data: (typeof book.tests)[number]["data"]) => object): Book {
  return {
    ...book,
    tests: book.tests.map((test) => (test.id === id ? { ...test, data: change(test.data) } : test)),
  } as Book;
}

describe("rotorFamily", () => {
  it("has every row of every curve test of the rotor, each with its place", () => {
    expect(family.tests.map(({ id }) => id)).toEqual(curveTests.map(({ id }) => id));
    expect(family.readings).toHaveLength(curveTests.reduce((sum, { data }) => sum + data.rows.length, 0));
    const [first] = family.readings;
    expect(first.key).toBe(`${curveTests[0].id}#0`);
  });

  it("keeps a reading that is set aside in the picture, and out of the fit", () => {
    const { id } = curveTests[0];
    const less = familyIn(changed(id, (data) => withRowSetAside(data as never, 4, "hose came off")));
    expect(less.readings).toHaveLength(family.readings.length);
    expect(readingsInUse(less)).toHaveLength(family.readings.length - 1);
    expect(less.readings.find(({ key }) => key === `${id}#4`)?.aside).toBe("hose came off");
    expect(less.fit?.dof).toBe(
      (family.fit?.dof ?? 0) - 1 + ((family.fit?.degree ?? 0) - (less.fit?.degree ?? 0)),
    );
    const mark = curvePlot(less, { as: "psi" }, bandsFor(less)).marks?.find(({ key }) => key === `${id}#4`);
    expect(mark?.aside).toBe(true);
  });

  it("measures residuals in shares of blocked pressure", () => {
    const reading = family.readings[7];
    const psi = family.fit?.psi ?? [];
    expect(reading.residual).toBeCloseToRelative(
      (reading.psi - evaluatePolynomial(psi, reading.phi)) / psi[0],
      1e-12,
    );
    const squares = family.readings.reduce((sum, { residual }) => sum + (residual ?? 0) ** 2, 0);
    expect(familyRms(family)).toBeCloseToRelative(Math.sqrt(squares / family.readings.length), 1e-12);
    expect(plainResidualSd(family)).toBeCloseToRelative(Math.sqrt(squares / (family.fit?.dof ?? 1)), 1e-12);
  });

  it("shows readings that are too few for a curve, and those that are all set aside", () => {
    const { id } = curveTests[0];
    const one = {
      ...book,
      tests: book.tests
        .filter((test) => test.id === id)
        .map((test) => ({ ...test, data: { ...test.data, rows: test.data.rows.slice(0, 1) } })),
    } as Book;
    expect(familyIn(one).answer.basis).toBe("missing");
    expect(familyIn(one).readings.map(({ residual }) => residual)).toEqual([null]);
    const aside = {
      ...one,
      tests: one.tests.map((test) => ({ ...test, data: withRowSetAside(test.data, 0, "wet") })),
    };
    expect(familyIn(aside).readings.map((reading) => reading.aside)).toEqual(["wet"]);
  });

  it("is null for a rotor that the book does not have", () => {
    expect(rotorFamily(book, "none")).toBeNull();
  });
});

describe("bands of a family", () => {
  const bandAt = bandsFor(family);

  it("are wider for the next reading than for the mean, at every flow", () => {
    for (let phi = 0; phi <= (family.phiFree ?? 0); phi += 0.01) {
      const band = bandAt(phi);
      expect(band?.prediction).toBeGreaterThan(band?.mean ?? Number.POSITIVE_INFINITY);
    }
  });

  it("make the answer's figure: the widest mean band of the tested range over blocked pressure", () => {
    const { fit } = family;
    if (!fit) throw new Error("no fit");
    let most = 0;
    for (let i = 0; i <= 600; i++)
      most = Math.max(most, bandAt(fit.phiMin + ((fit.phiMax - fit.phiMin) * i) / 600)?.mean ?? 0);
    expect(sureness(family, bandAt)).toBeCloseToRelative(most / fit.psi[0], 0.01);
  });

  it("take the weight of one more reading from the readings near it", () => {
    const reading = (phi: number, weight: number) => ({ aside: null, phi, weight });
    const near = weightNear({
      readings: [reading(0, 100), reading(0.01, 100), reading(0.19, 4), reading(0.2, 4)],
    } as unknown as RotorFamily);
    expect(near(0)).toBeCloseToRelative(100, 1e-6);
    expect(near(0.2)).toBeCloseToRelative(4, 1e-6);
    expect(near(0.1)).toBeGreaterThan(4);
    expect(near(0.1)).toBeLessThan(100);
  });
});

describe("what each test brought", () => {
  it("adds up to the whole of what fixes the curve", () => {
    const all = contributions(family);
    expect(all.reduce((sum, { share }) => sum + (share ?? 0), 0)).toBeCloseToRelative(1, 1e-9);
    expect(all.map(({ used }) => used)).toEqual(curveTests.map(({ data }) => data.rows.length));
  });

  it("finds the tachometer that reads 4 % high, among four tests, by its test and size", () => {
    const { id } = curveTests[1];
    const wrong = changed(id, (data) => ({
      ...data,
      rows: (data.rows as { speed: { value: number; unit: string } }[]).map((row) => ({
        ...row,
        speed: { ...row.speed, value: row.speed.value * 1.04 },
      })),
    }));
    const before = familyOffsets(family).find(({ test }) => family.tests[test].id === id)?.offset ?? 0;
    const said = familyOffsets(familyIn(wrong)).filter(({ stands }) => stands);
    expect(said.map(({ test }) => family.tests[test].id)).toEqual([id]);
    expect((1 + said[0].offset) / (1 + before)).toBeCloseToRelative(1.04, 0.005);
    expect(offsetSentences(familyIn(wrong)).get(id)).toMatch(/^Its tachometer reads about [34]\.\d\s% high/);
  });
});

describe("groups by speed", () => {
  const at = (test: number, rpm: number, residual = 0) =>
    ({ test, rpm, residual, key: `${test}#${rpm}` }) as unknown as RotorFamily["readings"][number];

  it("keeps nominal speeds apart, each with its mean and rms", () => {
    const groups = groupsOf([
      at(0, 600, 0.01),
      at(0, 603, 0.03),
      at(0, 1000),
      at(0, 998),
      at(1, 600),
      at(1, 600),
    ]);
    expect(groups.map(({ test, rpm }) => [test, rpm])).toEqual([
      [0, 601.5],
      [0, 999],
      [1, 600],
    ]);
    expect(groups[0].mean).toBeCloseToRelative(0.02, 1e-12);
    expect(groups[0].rms).toBeCloseToRelative(Math.sqrt(5e-4), 1e-12);
  });

  it("keeps a test together whose speed followed the load", () => {
    const groups = groupsOf([at(0, 13000), at(0, 15000), at(0, 17500), at(0, 21000)]);
    expect(groups).toHaveLength(1);
    expect(groups[0].range).toEqual([13000, 21000]);
  });

  it("draws a strip for every group, with the mean of each", () => {
    const plot = groupPlot(family);
    expect(plot.strips).toHaveLength(groupsOf(readingsInUse(family)).length);
    expect(plot.lines).toHaveLength(plot.strips?.length ?? 0);
  });
});

describe("the family as it is shown", () => {
  const shown = { as: "pressure", rpm: 24000, diameter: 0.044, weather: DEFAULT_WEATHER } as const;

  it("follows the fan laws between two speeds: flow as n, pressure as n²", () => {
    const slow = unitsOf(family, shown);
    const fast = unitsOf(family, { ...shown, rpm: 48000 });
    expect(fast.x(0.1) / slow.x(0.1)).toBeCloseToRelative(2, 1e-12);
    expect(fast.y(1) / slow.y(1)).toBeCloseToRelative(4, 1e-12);
  });

  it("is corrected for size at a size that was not tested, and there alone", () => {
    expect(unitsOf(family, shown).sizeFactor).toBe(1);
    const small = unitsOf(family, { ...shown, diameter: 0.03 });
    expect(small.sizeFactor).toBeGreaterThan(0.8);
    expect(small.sizeFactor).toBeLessThan(1);
  });

  it("has readings on its own axes, solid within the tested range, dashed beyond", () => {
    const plot = curvePlot(family, shown, bandsFor(family));
    for (const { x, y, aside } of plot.marks ?? [])
      if (!aside) {
        expect(x).toBeLessThanOrEqual(plot.x.to);
        expect(y).toBeLessThanOrEqual(plot.y.to);
        expect(y).toBeGreaterThanOrEqual(plot.y.from);
      }
    expect(plot.lines?.filter(({ style }) => style === "solid").map(({ key }) => key)).toEqual(["tested"]);
    expect(plot.x).toEqual(residualPlot(family, shown, bandsFor(family)).x);
  });

  it("shows η and λ at the readings that know their shaft power", () => {
    const eta = curvePlot(family, { as: "efficiency" }, bandsFor(family));
    expect(eta.marks?.length).toBe(family.readings.filter(({ lambda }) => lambda !== null).length);
    for (const { y } of eta.lines?.flatMap(({ points }) => points) ?? []) expect(y).toBeLessThan(100);
  });

  it("asks for the next readings in litres a second or in φ, as the chart shows", () => {
    const missing = nextReadings(family);
    if (!missing) throw new Error("nothing to ask for");
    const flows = missingInUnits(family, shown, missing);
    expect(flows?.unit).toBe("L/s");
    expect(Number(flows?.from)).toBeCloseTo(unitsOf(family, shown).x(missing.from), 1);
    expect(missingInUnits(family, { as: "psi" }, missing)?.from).toMatch(/^φ = 0\.\d+$/);
  });
});
