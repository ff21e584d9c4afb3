import { describe, expect, it } from "vitest";
import { skirtOf } from "#shared/decide/size/build.ts";
import { ratedAt } from "#shared/decide/size/rated.ts";
import { sizesOf } from "#shared/decide/size/size.ts";
import { type SpreadAsked, sizeSpread } from "#shared/decide/size/spread.ts";
import { askedOf } from "#shared/decide/size/wound.ts";
import type { AnyPredictInput } from "#shared/physics/predictAny.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";
import { CRAWLER, question, questionOf } from "./examples.ts";

const DIAMETERS = [0.034, 0.038, 0.042, 0.046, 0.05, 0.054, 0.058, 0.062];
const NEED = { pull: 6 } as const;

const spreadOf = (change: Partial<SpreadAsked>): SpreadAsked => ({
  input: { ...PANE_CRAWLER, pack: CRAWLER.pack },
  uncertain: { uncertainty: {} },
  sizeOf: (copy: AnyPredictInput) => ({
    ...CRAWLER,
    rotor: copy.rotor,
    vehicle: copy.vehicle,
    skirt: "skirt" in copy ? copy.skirt : null,
  }),
  need: NEED,
  diameters: DIAMETERS,
  keeps: DIAMETERS.map(() => true),
  ...change,
});

describe("ratedAt", () => {
  const book = demoBook();
  it.each(book.builds.map(({ data }) => [data.name, data] as const))(
    "%s of the demo, in closed form: K_v and watts of the row that was put back, to 1e-9",
    (_name, build) => {
      const asked = questionOf(book, build, { pull: build.skirt ? 4 : 2 });
      const diameters = "thrust" in asked.build.rotor ? [0.09, 0.12, 0.15] : DIAMETERS;
      const done = sizesOf(asked, diameters).rows.filter(({ kv }) => kv !== null);
      expect(done.length).toBeGreaterThan(0);
      for (const row of done) {
        const rated = ratedAt(askedOf(asked), row.diameter);
        expect(rated?.kv).toBeCloseToRelative(row.kv ?? Number.NaN, 1e-9);
        expect(rated?.packPower).toBeCloseToRelative(row.packPower ?? Number.NaN, 1e-9);
      }
    },
  );

  it("of a pack too weak: null, as no winding does it", () => {
    const weak = question({ pack: { ...CRAWLER.pack, cellResistance: 0.6 } }, { pull: 12 });
    expect(ratedAt(askedOf(weak), 0.045)).toBeNull();
  });
});

describe("sizeSpread", () => {
  it("of numbers that are all certain: every quantile is the nominal one", () => {
    const { rows, best, power, done } = sizeSpread(spreadOf({ samples: 4 }));
    for (const { packPower, kv } of rows) {
      expect([packPower?.p5, packPower?.p95, kv?.p50]).toEqual([1, 1, 1]);
    }
    expect([best?.p5, power?.p50, done]).toEqual([best?.p95, 1, 1]);
  });

  it("the best size between the sizes: within a tenth of a step of the least of a scan in steps of a twentieth", () => {
    const { best } = sizeSpread(spreadOf({ samples: 4 }));
    const scan = Array.from({ length: 141 }, (_, i) => 0.034 + 0.0002 * i);
    const { rows, least } = sizesOf(question({}, NEED), scan);
    expect(best?.p50).toBeGreaterThan(rows[least ?? 0].diameter - 4e-4);
    expect(best?.p50).toBeLessThan(rows[least ?? 0].diameter + 4e-4);
  });

  // The watts rise with the gap, so their quantiles are the watts at the gap's own: 5 % at 1.644854 standard deviations.
  it("of an uncertain gap: the watts at the gap's own 5 and 95 %, within the sampling of 1024", () => {
    const gap = skirtOf(CRAWLER).gap;
    const sd = gap / 20;
    const { rows } = sizeSpread(spreadOf({ uncertain: { uncertainty: { "skirt.gap": sd } }, samples: 1024 }));
    const wattsAt = (z: number) =>
      sizesOf(question({ skirt: { ...skirtOf(CRAWLER), gap: gap + z * sd } }, NEED), DIAMETERS).rows.map(
        ({ packPower }) => packPower ?? Number.NaN,
      );
    const [low, middle, high] = [wattsAt(-1.644854), wattsAt(0), wattsAt(1.644854)];
    rows.forEach(({ packPower }, i) => {
      expect(packPower?.p5).toBeCloseToRelative(low[i] / middle[i], 2e-3);
      expect(packPower?.p95).toBeCloseToRelative(high[i] / middle[i], 2e-3);
    });
  });

  it("with sizes that keep no limit: the best among those that do, at their end; with none: no best", () => {
    const small = DIAMETERS.map((diameter) => diameter < 0.04);
    expect(sizeSpread(spreadOf({ keeps: small, samples: 4 })).best?.p50).toBe(0.038);
    const none = sizeSpread(spreadOf({ keeps: DIAMETERS.map(() => false), samples: 4 }));
    expect([none.best, none.power, none.done]).toEqual([null, null, 0]);
  });
});
