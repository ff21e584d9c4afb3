import { describe, expect, it } from "vitest";
import { CURVE_PARTS, placeOf, placeToShow, testsOfPart } from "#client/views/curves/address.ts";
import { frictionGroups } from "#client/views/curves/friction/frictionData.ts";
import { frictionPlot } from "#client/views/curves/friction/frictionPlot.ts";
import { frictionSentence } from "#client/views/curves/friction/frictionSentence.ts";
import { leakPage, lipFlow } from "#client/views/curves/leak/leakData.ts";
import { leakPlot, leakResidualPlot } from "#client/views/curves/leak/leakPlot.ts";
import { againstLip, leakSentence, middlePressure } from "#client/views/curves/leak/leakSentence.ts";
import { motorPage } from "#client/views/curves/motor/motorData.ts";
import { currentPlot, motorResidualPlot, voltagePlot } from "#client/views/curves/motor/motorPlots.ts";
import { motorSentence, withError } from "#client/views/curves/motor/motorSentence.ts";
import { agreement, pullPage } from "#client/views/curves/pull/pullData.ts";
import { pullPlot } from "#client/views/curves/pull/pullPlot.ts";
import { pullSentence, ratioText } from "#client/views/curves/pull/pullSentence.ts";
import type { Book } from "#shared/book/book.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const [motor] = book.motors;
const without = (changedBook: Book, kind: string): Book => ({
  ...changedBook,
  tests: changedBook.tests.filter(({ data }) => data.kind !== kind),
});

function known<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error("the demo lacks it");
  return value;
}

describe("addresses of Curves", () => {
  it("reads collection and part, and nothing else", () => {
    expect(placeOf("rotors/b8")).toEqual({ collection: "rotors", id: "b8" });
    expect(placeOf("rotors")).toEqual({ collection: "rotors", id: null });
    expect(placeOf("packs/p1")).toEqual({ collection: "packs", id: "p1" });
    expect(placeOf("builds/b1")).toBeNull();
    expect(placeOf(null)).toBeNull();
  });

  it("shows the first part with tests where none is named, none where the named one is not there", () => {
    const first = known(placeToShow(book, null));
    expect(first.collection).toBe("rotors");
    expect(testsOfPart(book, "rotors", known(first.id)).length).toBeGreaterThan(0);
    expect(placeToShow(book, { collection: "rotors", id: "gone" })).toBeNull();
    expect(placeToShow(without(without(book, "curve"), "thrust"), null)?.collection).toBe("motors");
  });

  it("counts with a part only tests of the kinds that bear on it", () => {
    for (const [collection, { kinds }] of Object.entries(CURVE_PARTS))
      for (const part of book[collection as keyof typeof CURVE_PARTS])
        for (const test of testsOfPart(book, collection as keyof typeof CURVE_PARTS, part.id))
          expect(kinds as readonly string[]).toContain(test.data.kind);
  });
});

describe("a motor's page", () => {
  const page = known(motorPage(book, motor.id));

  it("splits each voltage into the winding's drop and what is left, which lies on the line but for its residual", () => {
    const { kv, resistance } = page.basis.constants;
    for (const point of page.points) {
      expect(point.backEmf + resistance * point.current).toBeCloseToRelative(point.voltage, 1e-12);
      expect(point.backEmf - point.rpm / kv).toBeCloseTo(point.residual, 9);
    }
  });

  it("draws every row in all three charts, on their own axes", () => {
    for (const plot of [voltagePlot(page, 2), currentPlot(page), motorResidualPlot(page)]) {
      expect(plot.marks).toHaveLength(page.points.length);
      for (const { y } of plot.marks ?? []) expect(y >= plot.y.from && y <= plot.y.to).toBe(true);
    }
    expect(voltagePlot(page, 2).bands).toHaveLength(1);
  });

  it("gives K_v with its error in words, and says so where no test is logged", () => {
    expect(motorSentence(page)).toMatch(/turns at \d+.* ± [\d.]+\srpm\/V .*from \d+ rows of 1 test\.$/);
    const bare = known(motorPage(without(book, "motor"), motor.id));
    expect(motorSentence(bare)).toMatch(/^No motor test .* maker's/);
  });

  it("shows as many digits as the error is worth", () => {
    expect(withError(7812.34, 41.2, "kv")).toBe("7812 ± 41\u202frpm/V");
    expect(withError(0.3517, 0.0123, "resistance")).toBe("0.352 ± 0.012\u202fΩ");
    expect(withError(0.35, null, "resistance")).toBe("0.350\u202fΩ");
  });
});

describe("leaks", () => {
  const skirt = known(
    book.skirts.find(({ id }) => testsOfPart(book, "skirts", id).some(({ data }) => data.kind === "leak")),
  );
  const page = leakPage(book, "skirt", skirt.id);
  const [group] = page.groups;

  it("keeps tests of one surface and one gap together", () => {
    const again = {
      ...book,
      tests: [
        ...book.tests,
        ...book.tests
          .filter(({ data }) => data.kind === "leak")
          .map((test) => ({ ...test, id: `${test.id}-2` })),
      ],
    };
    const twice = leakPage(again, "skirt", skirt.id);
    expect(twice.groups).toHaveLength(page.groups.length);
    expect(twice.groups[0].points).toHaveLength(2 * group.points.length);
  });

  it("lays the lip gap's own flow beside the readings, equal to them within a fifth in the demo, which was made by it", () => {
    for (const { pressure, flow } of group.points)
      expect(lipFlow(group, pressure)).toBeCloseToRelative(flow, 0.2);
  });

  it("draws straight lines on logarithmic axes, solid over the tested pressures", () => {
    const plot = leakPlot(page, "skirt");
    expect(plot.x.log && plot.y.log).toBe(true);
    const tested = known(plot.lines?.find(({ key }) => key === `${group.key} tested`));
    const [first, last] = [tested.points[0], known(tested.points.at(-1))];
    const slope = Math.log(last.y / first.y) / Math.log(last.x / first.x);
    expect(slope).toBeCloseToRelative(known(group.fit).exponent, 1e-9);
    expect([first.x, last.x]).toEqual(known(group.fit).pressureRange.map((p) => expect.closeTo(p, 6)));
  });

  it("has residuals that are small against the flow", () => {
    for (const { y } of leakResidualPlot(page).marks ?? []) expect(Math.abs(y)).toBeLessThan(10);
  });

  it("says flow, pressure and how the lip gap compares", () => {
    const fit = known(group.fit);
    const pressure = middlePressure(group);
    const ratio = (fit.coefficient * pressure ** fit.exponent) / lipFlow(group, pressure);
    expect(againstLip(group)).toBeCloseToRelative(ratio, 1e-12);
    expect(leakSentence(group)).toMatch(
      / leaks [\d.]+\sL\/s at \d+\sPa, [\d.]+\s% (more|less) than a lip gap/,
    );
    expect(leakSentence({ ...group, fit: null })).toMatch(/not settled yet/);
  });
});

describe("friction", () => {
  const surface = known(book.surfaces.find(({ id }) => frictionGroups(book, id).length > 0));
  const [group] = frictionGroups(book, surface.id);

  it("puts the wheels first, then skirt by skirt", () => {
    const titles = frictionGroups(book, surface.id).map(({ key }) => key.split(" ")[0]);
    expect(titles[0]).toBe("wheels");
    expect(titles.slice(1).every((title) => title === "skirt")).toBe(true);
  });

  it("draws a bracket a slide in degrees of tilt, and the tilt whose tangent is μ", () => {
    const plot = frictionPlot(group);
    const read = (plot.brackets ?? []).length + (plot.marks ?? []).length;
    expect(read).toBe(group.slides.length);
    const level = known(plot.levels?.[0]);
    expect(Math.tan((level.at * Math.PI) / 180)).toBeCloseToRelative(known(group.fit).mu, 1e-12);
  });

  it("leaves a slide that never slid open upwards, one without a tilt that held a mark", () => {
    const [slide] = group.slides;
    const plot = frictionPlot({
      ...group,
      slides: [
        { ...slide, held: 0.5, slid: null },
        { ...slide, held: null, slid: 0.6 },
      ],
    });
    expect(plot.brackets?.[0].hi).toBeNull();
    expect(plot.marks).toHaveLength(1);
  });

  it("says μ from how many slides, and what is not settled", () => {
    expect(frictionSentence(group, "glass")).toMatch(
      /^Wheels hold on glass with μ = 0\.\d\d.*, from \d+ slides\.$/,
    );
    expect(frictionSentence({ ...group, fit: null }, "glass")).toMatch(/not settled yet/);
  });
});

describe("pulls", () => {
  const skirt = known(book.skirts.find(({ id }) => pullPage(book, "skirt", id).points.length > 0));
  const page = pullPage(book, "skirt", skirt.id);

  it("sets every bracket of the demo beside a prediction", () => {
    expect(page.missing).toEqual([]);
    expect(page.points.every(({ predicted }) => predicted !== null && predicted > 0)).toBe(true);
    expect(pullPlot(page).brackets).toHaveLength(page.points.length);
  });

  it("counts brackets that hold the prediction, lie above and below, those set aside left out", () => {
    const at = (held: number, letGo: number | null, aside: string | null = null) =>
      ({ held, letGo, predicted: 5, aside }) as never;
    expect(agreement([at(4, 6), at(4, null), at(6, 7), at(6, null), at(2, 4), at(2, 4, "slipped")])).toEqual({
      meets: 2,
      above: 2,
      below: 1,
    });
  });

  it("gives measured over predicted in the middle of brackets that all say 1.1", () => {
    const text = ratioText({ ...page, ratio: { median: 1.1, interval: [1.04, 1.17], warnings: [] } });
    expect(text).toBe("1.10 (1.04 to 1.17)");
  });

  it("says how pulls compare, and that nothing can be compared without a prediction", () => {
    expect(pullSentence(page)).toMatch(/^Pulls come out at \d\.\d\d × the prediction; /);
    const blind = {
      ...page,
      points: page.points.map((point) => ({ ...point, predicted: null })),
      ratio: null,
    };
    expect(pullSentence(blind)).toMatch(/^No pull can be compared/);
  });

  it("has the line of agreement on the diagonal of both axes", () => {
    const plot = pullPlot(page);
    const line = known(plot.lines?.find(({ key }) => key === "one"));
    for (const { x, y } of line.points) expect(y).toBeCloseToRelative(x, 1e-12);
    expect([plot.x.from, plot.x.to]).toEqual([plot.y.from, plot.y.to]);
  });
});
