import { describe, expect, it } from "vitest";
import { frictionGroups } from "#client/views/curves/friction/frictionData.ts";
import { frictionStrength } from "#client/views/curves/friction/frictionStrength.ts";
import { leakPage } from "#client/views/curves/leak/leakData.ts";
import { leakContributions, leakMissing, leakNext } from "#client/views/curves/leak/leakFacts.ts";
import { leakPlot, leakResidualPlot } from "#client/views/curves/leak/leakPlot.ts";
import { motorPage } from "#client/views/curves/motor/motorData.ts";
import { motorContributions, motorMissing, motorNext } from "#client/views/curves/motor/motorFacts.ts";
import { motorResidualPlot, torquePlot } from "#client/views/curves/motor/motorPlots.ts";
import { driftSentences, referenceText } from "#client/views/curves/pull/driftSentence.ts";
import { pullPage } from "#client/views/curves/pull/pullData.ts";
import { reducedPulls } from "#client/views/curves/pull/pullReduced.ts";
import { pulledPlot, reducedPlot } from "#client/views/curves/pull/trendPlot.ts";
import { contributionLines } from "#client/views/curves/share.ts";
import { strengthContributions, strengthOf } from "#client/views/curves/strength/strength.ts";
import { distributionPlot, strengthResidualPlot } from "#client/views/curves/strength/strengthPlots.ts";
import { strengthMissing } from "#client/views/curves/strength/strengthSentence.ts";
import type { Book } from "#shared/book/book.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();

function known<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error("the demo lacks it");
  return value;
}
const changed = (change: (data: BenchTest) => BenchTest): Book => ({
  ...book,
  tests: book.tests.map((test) => ({ ...test, data: change(test.data) })),
});
/** Every test of a kind twice, under two names. */
const doubled = (kind: string): Book => ({
  ...book,
  tests: [
    ...book.tests,
    ...book.tests.filter(({ data }) => data.kind === kind).map((test) => ({ ...test, id: `${test.id}-2` })),
  ],
});
const total = (shares: Iterable<{ share: number | null }>) =>
  [...shares].reduce((sum, { share }) => sum + (share ?? 0), 0);
const finiteBand = (points: readonly { lo: number; hi: number }[]) =>
  points.every(({ lo, hi }) => Number.isFinite(lo) && hi >= lo);

const leakOf = (changedBook: Book) => {
  const test = known(changedBook.tests.find(({ data }) => data.kind === "leak"));
  if (test.data.kind !== "leak") throw new Error("no leak");
  return leakPage(changedBook, "skirt", test.data.skirt);
};

describe("a leak's page", () => {
  const page = leakOf(book);
  const [group] = page.groups;

  it("draws both bands around the law, the mean's inside the one of a reading", () => {
    const { bands = [] } = leakPlot(page, "skirt");
    const [prediction, mean] = bands;
    expect(bands.map(({ strength }) => strength)).toEqual(["prediction", "mean"]);
    for (const [i, { lo, hi }] of mean.points.entries()) {
      expect(prediction.points[i].lo).toBeLessThan(lo);
      expect(prediction.points[i].hi).toBeGreaterThan(hi);
    }
    expect(leakResidualPlot(page).bands).toHaveLength(2);
  });

  it("shares between two tests alike: half each, the flow the same without either", () => {
    const twice = leakContributions(leakOf(doubled("leak")).groups[0]);
    expect(twice.size).toBe(2);
    for (const { share, shift } of twice.values()) {
      expect(share).toBeCloseToRelative(0.5, 1e-9);
      expect(Math.abs(shift ?? 1)).toBeLessThan(1e-9);
    }
    expect(total(leakContributions(group).values())).toBeCloseToRelative(1, 1e-12);
  });

  it("asks for readings within the tested range, and promises what the information gives", () => {
    const next = known(leakNext(known(group.fit)));
    const [lo, hi] = known(group.fit).pressureRange;
    expect(Math.exp(next.from)).toBeGreaterThanOrEqual(lo * 0.999);
    expect(Math.exp(next.to)).toBeLessThanOrEqual(hi * 1.001);
    expect(leakMissing(group)).toMatch(/more readings? between [\d.]+ and [\d.]+ L\/s \(.*Pa.*\) would/);
  });

  it("says what fills it where a single reading is left", () => {
    const bare = leakOf(
      changed((data) => (data.kind === "leak" ? { ...data, rows: data.rows.slice(0, 1) } : data)),
    );
    expect(bare.groups[0].fit).toBeNull();
    expect(leakMissing(bare.groups[0])).toMatch(/two suctions or more/);
    expect(leakPlot(bare, "skirt").bands).toEqual([]);
  });
});

describe("a motor's page", () => {
  const page = known(motorPage(book, book.motors[0].id));

  it("draws the torque line down to no torque, its band around it, every reading on the line but for its residual", () => {
    const plot = torquePlot(page);
    const [line] = known(plot.lines);
    const [band] = known(plot.bands);
    expect(line.points[0].y).toBeGreaterThan(0);
    expect(Math.min(...line.points.map(({ y }) => y))).toBeLessThan(line.points[0].y / 10);
    expect(finiteBand(band.points)).toBe(true);
    for (const { y } of known(plot.marks)) expect(y).toBeGreaterThan(-line.points[0].y / 20);
    expect(motorResidualPlot(page).bands?.every(({ points }) => finiteBand(points))).toBe(true);
  });

  it("shares add up to one; two tests alike bring half each and move nothing", () => {
    expect(total(motorContributions(page))).toBeCloseToRelative(1, 1e-12);
    const twice = motorContributions(known(motorPage(doubled("motor"), book.motors[0].id)));
    for (const { share, shift } of twice) {
      expect(share).toBeCloseToRelative(0.5, 1e-9);
      expect(Math.abs(shift ?? 1)).toBeLessThan(1e-9);
    }
  });

  it("asks for no load that draws more than was ever read, with a slow row at a low voltage and a fast one at a high", () => {
    const rows = [
      [4, 0.5, 8900, true],
      [8, 0.5, 18100, true],
      [11, 0.6, 24900, true],
      [8, 3.1, 15900, false],
      [10, 4.2, 19000, false],
    ].map(([voltage, current, speed, noLoad]) => ({
      voltage: { value: voltage, unit: "V" },
      current: { value: current, unit: "A" },
      speed: { value: speed, unit: "rpm" },
      throttle: { value: 100, unit: "%" },
      noLoad,
    }));
    const other = changed((data) =>
      data.kind === "motor" ? ({ ...data, resistance: undefined, rows } as typeof data) : data,
    );
    const asked = known(motorNext(known(motorPage(other, book.motors[0].id))));
    // 11 V at 15 900 rpm and 2300 rpm/V leave 4.1 V for 0.39 Ω: far above the 4.2 A read
    expect(asked.from).toBeGreaterThan(20_000);
  });

  it("asks for rows at tested speeds, with the current they draw; with one row left, for what settles the constants", () => {
    const speeds = page.points.map(({ rpm }) => rpm);
    const next = motorNext(page);
    if (next) expect(next.from).toBeGreaterThanOrEqual(Math.min(...speeds));
    expect(motorMissing(page)).toMatch(/rpm \(a load that draws .*A at|hardly narrow/);
    const bare = changed((data) =>
      data.kind === "motor" ? { ...data, resistance: undefined, rows: data.rows.slice(0, 1) } : data,
    );
    const poor = known(motorPage(bare, book.motors[0].id));
    expect(motorMissing(poor)).toMatch(/ohmmeter/);
    expect(torquePlot(poor).bands).toEqual([]);
  });
});

describe("friction as a strength", () => {
  const surface = known(book.tests.find(({ data }) => data.kind === "friction"));
  if (surface.data.kind !== "friction") throw new Error("no friction");
  const [group] = frictionGroups(book, surface.data.surface);
  const strength = frictionStrength(group);

  it("fits the same μ as the friction fit, and draws it at its tilt", () => {
    expect(known(strength.fit).mean).toBeCloseToRelative(known(group.fit).mu, 1e-9);
    const { lines, bands, brackets } = distributionPlot(strength);
    expect(known(brackets)).toHaveLength(strength.trials.filter(({ aside }) => !aside).length);
    const half = known(lines)[0].points.filter(({ y }) => y < 50).length;
    const at = known(lines)[0].points[half].x;
    expect(Math.abs(Math.tan((at * Math.PI) / 180) - known(group.fit).mu)).toBeLessThan(0.05);
    expect(finiteBand(known(bands)[0].points)).toBe(true);
    expect(strengthResidualPlot(strength).brackets).toHaveLength(strength.trials.length);
  });

  it("says how many more slides halve the uncertainty", () => {
    expect(strengthMissing(strength, (tilt) => `${tilt.toFixed(1)}°`)).toMatch(
      /more slides in steps like these would (halve|cut)|All slides agree between/,
    );
  });
});

describe("pulls brought to one charge", () => {
  const tests = book.tests.filter(({ data }) => data.kind === "pull");
  const first = known(tests[0]);
  if (first.data.kind !== "pull") throw new Error("no pull");
  const { surface } = first.data;
  const page = pullPage(book, "surface", surface);
  const pulls = known(reducedPulls(page));

  it("lays each bracket over its own prediction: their ratio is the same before and after", () => {
    const before = known(pulledPlot(pulls).brackets);
    const after = known(reducedPlot(pulls).brackets);
    for (const [i, { predicted }] of pulls.points.entries()) {
      const by = pulls.reference / predicted;
      expect(after[i].lo).toBeCloseToRelative(before[i].lo * by, 1e-12);
    }
    expect(pulls.strength.shown(known(pulls.strength.fit).mean)).toBeCloseToRelative(
      (known(page.ratio).median * pulls.reference * 1000) / 9.80665,
      1e-6,
    );
  });

  it("says of voltage and order whether a trend is left, with p-values", () => {
    const said = driftSentences(pulls);
    expect(said[0]).toMatch(/trend with voltage is left \(p = |per volt \(p [<=]/);
    expect(said[1]).toMatch(/From pull to pull .*\(p [<=]/);
    expect(referenceText(pulls)).toMatch(/predicted pull of .*V\)/);
  });

  it("finds a trend that was put there: brackets made to fall with the voltage", () => {
    const middle = 7.5;
    const leaning = changed((data) =>
      data.kind !== "pull"
        ? data
        : {
            ...data,
            rows: data.rows.map((row) => {
              const by = Math.exp(-0.8 * ((row.voltage?.value ?? middle) - middle));
              const scaled = <T extends { value: number }>(load: T): T => ({
                ...load,
                value: load.value * by,
              });
              return { ...row, held: scaled(row.held), letGo: row.letGo && scaled(row.letGo) };
            }),
          },
    );
    const drift = known(known(reducedPulls(pullPage(leaning, "surface", surface))).againstVoltage);
    expect(drift.slope).toBeLessThan(-0.4);
    expect(drift.pValue).toBeLessThan(0.01);
  });

  it("with pulls that all held, or all let go at once: no distribution, and what to do next is said", () => {
    const held = changed((data) =>
      data.kind === "pull" ? { ...data, rows: data.rows.map((row) => ({ ...row, letGo: null })) } : data,
    );
    const open = pullPage(held, "surface", surface);
    expect(open.problem).toMatch(/All pulls held.*larger loads/);
    expect(known(reducedPulls(open)).strength.fit).toBeNull();
    expect(driftSentences(known(reducedPulls(open)))[0]).toMatch(/can't be told/);
    const zero = { value: 0, unit: "g" };
    const atOnce = changed((data) =>
      data.kind === "pull" ? { ...data, rows: data.rows.map((row) => ({ ...row, held: zero })) } : data,
    );
    expect(pullPage(atOnce, "surface", surface).problem).toMatch(/let go at once.*smaller loads/);
  });

  it("one that let go at once among others enters as a bracket from 0", () => {
    const zero = { value: 0, unit: "g" };
    const one = changed((data) =>
      data.kind === "pull"
        ? { ...data, rows: data.rows.map((row, i) => (i === 0 ? { ...row, held: zero } : row)) }
        : data,
    );
    const { strength } = known(reducedPulls(pullPage(one, "surface", surface)));
    expect(strength.trials[0].low).toBe(Number.NEGATIVE_INFINITY);
    expect(strength.fit).not.toBeNull();
    for (const { lo } of known(distributionPlot(strength).brackets)) expect(Number.isFinite(lo)).toBe(true);
  });

  it("tests alike bring the same share, and moving one's pulls moves the median away from it", () => {
    const brought = strengthContributions(pulls.strength, (mean, without) => mean - without);
    expect(total(brought.values())).toBeCloseToRelative(1, 1e-9);
    for (const { shift } of brought.values()) expect(Number.isFinite(shift ?? 0)).toBe(true);
  });
});

describe("strengthMissing, on slides that all agree", () => {
  const words = {
    one: "slide",
    step: "tilt",
    ends: "slid",
    axis: "",
    offAxis: "",
    event: "",
    figure: "μ",
  };
  const trial = (low: number, high: number) => ({
    key: `${low}`,
    testId: "t",
    row: 0,
    test: 0,
    aside: false,
    low,
    high,
  });

  it("asks for one that is stopped in the middle of what they share, which halves it", () => {
    const strength = strengthOf({
      trials: [trial(0.5, 0.7), trial(0.6, 0.8)],
      shown: (x) => x,
      off: (x, mean) => x - mean,
      words,
    });
    expect(strengthMissing(strength, (x) => x.toFixed(2))).toBe(
      "All slides agree between 0.60 and 0.70: one more that is stopped at 0.65 would halve that. Finer steps would show the scatter.",
    );
  });

  it("asks for two, where a single one shows no scatter", () => {
    const strength = strengthOf({
      trials: [trial(0.5, 0.7)],
      shown: (x) => x,
      off: (x, mean) => x - mean,
      words,
    });
    expect(strengthMissing(strength, String)).toMatch(/^Two or more slides/);
  });
});

describe("contributionLines", () => {
  const words = { one: "row", figure: "K", alone: false };
  it.each([
    [
      { used: 4, aside: 1, share: 0.25, shift: 0.02 },
      ["4 rows, 1 set aside; 25\u202f% of what fixes it", "Without it K would be 2.0\u202f% lower."],
    ],
    [{ used: 1, aside: 0, share: null, shift: -0.02 }, ["1 row", "Without it K would be 2.0\u202f% higher."]],
    [
      { used: 3, aside: 0, share: 1, shift: null },
      ["3 rows; 100\u202f% of what fixes it", "Without it K could not be told."],
    ],
    [
      { used: 3, aside: 0, share: 0.5, shift: 1e-5 },
      ["3 rows; 50\u202f% of what fixes it", "Without it K would be the same."],
    ],
  ])("%o", (contribution, lines) => {
    expect(contributionLines(contribution, words)).toEqual(lines);
  });

  it("of the only test: no word of being without it", () => {
    expect(
      contributionLines({ used: 4, aside: 0, share: 1, shift: null }, { ...words, alone: true }),
    ).toHaveLength(1);
  });
});
