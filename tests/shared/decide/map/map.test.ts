import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { MapQuestion } from "#shared/decide/map/grid.ts";
import { buildAt, MAP_KEYS, type MapBuild, type MapKey } from "#shared/decide/map/place.ts";
import { mapOf, mapPart, partsOf } from "#shared/decide/map/solve.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { axisOf, mapBuild, openInput } from "#tests/support/mapBuild.ts";
import { mapField } from "#tests/support/mapField.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const question = (x: MapKey, y: MapKey, change: Partial<MapBuild> = {}): MapQuestion => {
  const axes = [axisOf(x, 23), axisOf(y, 17)] as const;
  const diameters = axes.flatMap(({ key, values }) => (key === "diameter" ? values : []));
  return { of: mapBuild(change, diameters), x: axes[0], y: axes[1], timed: false };
};
const pairs = MAP_KEYS.flatMap((x, i) => MAP_KEYS.slice(i + 1).map((y) => [x, y] as const));

describe.each([...pairs, ["gap", "kv"], ["wheelFriction", "diameter"]] as [MapKey, MapKey][])(
  "a map over %s and %s",
  (x, y) => {
    const asked = question(x, y);
    const field = mapField(asked);

    it("has at random points what a prediction has there", () => {
      fc.assert(
        fc.property(fc.nat(asked.x.values.length - 1), fc.nat(asked.y.values.length - 1), (column, row) => {
          const place = { [x]: asked.x.values[column], [y]: asked.y.values[row] };
          const { worst, attitudes, point } = predictAny(buildAt(asked.of, place), [180]);
          const cell = row * field.columns + column;
          const margins = [worst.driving.margin, attitudes[0].parked.margin];
          const least = Math.min(...margins.map((margin) => margin ?? Number.POSITIVE_INFINITY));
          expect(field.margin[cell]).toBeCloseToRelative(least, 1e-9);
          if (point) expect(field.winding[cell]).toBeCloseToRelative(point.windingTemperature, 1e-9);
        }),
        { numRuns: 12 },
      );
    });
  },
);

const openPairs = pairs.filter((pair) => !pair.includes("gap"));

describe.each(openPairs)("a map of an open propeller over %s and %s", (x, y) => {
  const asked = question(x, y, { input: openInput() });
  const field = mapField(asked);

  it("has at random points what a prediction has there, to 1e-9, and no burst speed", () => {
    fc.assert(
      fc.property(fc.nat(asked.x.values.length - 1), fc.nat(asked.y.values.length - 1), (column, row) => {
        const place = { [x]: asked.x.values[column], [y]: asked.y.values[row] };
        const { worst, attitudes, point } = predictAny(buildAt(asked.of, place), [180]);
        const cell = row * field.columns + column;
        const margins = [worst.driving.margin, attitudes[0].parked.margin];
        const least = Math.min(...margins.map((margin) => margin ?? Number.POSITIVE_INFINITY));
        expect(field.margin[cell]).toBeCloseToRelative(least, 1e-9);
        if (point) expect(field.winding[cell]).toBeCloseToRelative(point.windingTemperature, 1e-9);
        if (point) expect(field.burst[cell]).toBeNaN();
      }),
      { numRuns: 12 },
    );
  });
});

describe("a map", () => {
  it("of a propeller refuses the gap, which moves nothing", () => {
    expectOutOfRange(() => mapField(question("gap", "mass", { input: openInput() })), "map.gap");
  });

  it("has the run's time where it is asked for, also along charge", () => {
    const asked = { ...question("charge", "mass"), timed: true };
    const field = mapField(asked);
    const { input, cell } = asked.of;
    const { openCircuitVoltage: _at, cellResistance: _r, ...wiring } = input.pack;
    const startCharge = asked.x.values[20];
    const { end } = runDown({ ...input, pack: { ...wiring, cell }, startCharge, angles: [] });
    expect(field.time[20]).toBeCloseToRelative(end.time, 2e-3);
  });

  it("of a build whose running gear gives is that of its predictions too", () => {
    const { input } = mapBuild();
    const soft = { ...input, vehicle: { ...input.vehicle, verticalStiffness: 20_000 } };
    const asked = question("mass", "series", { input: soft });
    const field = mapField(asked);
    const place = { mass: asked.x.values[7], series: 2 };
    const { worst, attitudes } = predictAny(buildAt(asked.of, place), [180]);
    const least = Math.min(worst.driving.margin ?? 0, attitudes[0].parked.margin ?? 0);
    expect(field.margin[1 * field.columns + 7]).toBeCloseToRelative(least, 1e-7);
  });

  it("solved in parts is the same to the last digit", () => {
    const asked = { ...question("diameter", "kv"), x: axisOf("diameter", 80), y: axisOf("kv", 60) };
    const cut = { ...asked, of: mapBuild({}, asked.x.values) };
    const parts = partsOf(cut, 2);
    expect(parts).toEqual([
      [0, 3072],
      [3072, 4800],
    ]);
    const whole = mapField(cut);
    const put = mapOf(
      cut,
      parts.map((part) => mapPart(cut, part)),
    );
    expect(put.margin).toEqual(whole.margin);
    expect(put.burst).toEqual(whole.burst);
  });

  it("knows the speed at which each size bursts", () => {
    const asked = question("diameter", "duty");
    const field = mapField(asked);
    const [diameter, duty] = [asked.x.values[3], asked.y.values[5]];
    const { point } = predictAny(buildAt(asked.of, { diameter, duty }));
    expect(field.burst[5 * field.columns + 3]).toBeCloseToRelative(
      130 / diameter / (point?.speed ?? 0),
      1e-9,
    );
  });

  it("refuses one setting on both axes, and an axis of one value", () => {
    expectOutOfRange(() => mapField({ ...question("gap", "mass"), y: axisOf("gap", 5) }), "map.y");
    const one = { key: "mass", values: [1] } as const;
    expectOutOfRange(() => mapField({ ...question("gap", "mass"), y: one }), "map.mass");
  });
});
