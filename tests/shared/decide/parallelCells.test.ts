import { describe, expect, it } from "vitest";
import { cutOffVoltage } from "#shared/book/cellVoltages.ts";
import { timeAlone } from "#shared/decide/choose/alone.ts";
import { PLACE } from "#shared/decide/choose/limits.ts";
import { placesOf } from "#shared/decide/choose/places.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { limitsOf } from "#shared/decide/limits/limits.ts";
import { predict } from "#shared/physics/predict.ts";
import { type RundownInput, runDown } from "#shared/physics/rundown.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";
import { CURVE, pack, question } from "./choose/questions.ts";
import { KNOWN } from "./limits/examples.ts";

/**
 * N_p like cells side by side are one cell of N_p times the capacity and rating and 1/N_p of the resistance: Kirchhoff.
 * Whatever is asked of a pack must come out the same for both.
 */
const STRINGS = 3;
const CELL = { capacity: 700, minimumVoltage: 3.2, resistance: 0.12, curve: CURVE, maxCurrent: 4 };
const WHOLE = { ...CELL, capacity: 2100, resistance: 0.04, maxCurrent: 12 };
const side = { series: 2, parallel: STRINGS, wireResistance: 0.014, cell: CELL };
const one = { series: 2, parallel: 1, wireResistance: 0.014, cell: WHOLE };
const build = (cells: typeof side): RundownInput => ({ ...PANE_CRAWLER, pack: cells });

describe("cells in parallel, against one cell as large as all of them", () => {
  it("the prediction is the same", () => {
    const at = ({ series, parallel, wireResistance, cell }: typeof side) =>
      predict({
        ...PANE_CRAWLER,
        pack: {
          series,
          parallel,
          wireResistance,
          cellResistance: cell.resistance,
          openCircuitVoltage: 3.9,
        },
      });
    const [a, b] = [at(side), at(one)];
    expect(a.suction).toBeCloseToRelative(b.suction, 1e-12);
    expect(a.point?.packVoltage).toBeCloseToRelative(b.point?.packVoltage ?? 0, 1e-12);
    expect(a.point?.packCurrent).toBeCloseToRelative(b.point?.packCurrent ?? 0, 1e-12);
  });

  it("the run-down ends as late and as low, every sample the same, the loaded cell among them", () => {
    const [a, b] = [runDown(build(side)), runDown(build(one))];
    expect(a.end.reason).toBe("minimum-voltage");
    expect(a.end.reason).toBe(b.end.reason);
    expect(a.end.time).toBeCloseToRelative(b.end.time, 1e-9);
    expect(a.samples).toHaveLength(b.samples.length);
    a.samples.forEach((sample, i) => {
      for (const key of ["charge", "cellVoltage", "packVoltage", "packCurrent", "suction"] as const)
        expect(sample[key]).toBeCloseToRelative(b.samples[i][key], 1e-9);
    });
  });

  it("with a drive cycle as well", () => {
    const cycle = [
      { angle: 90, share: 0.5, driveCurrent: 2 },
      { angle: 180, share: 0.5, moving: false, driveCurrent: 0 },
    ];
    const [a, b] = [side, one].map((cells) => runDown({ ...build(cells), cycle }));
    expect(a.end.time).toBeCloseToRelative(b.end.time, 1e-9);
    expect(a.samples.at(-1)?.cellVoltage).toBeCloseToRelative(b.samples.at(-1)?.cellVoltage ?? 0, 1e-9);
  });

  it.each([
    { share: 0.99, noted: true },
    { share: 1.01, noted: false },
  ])("a cell's rating at $share of what each gives: said is $noted", ({ share, noted }) => {
    const most = Math.max(...runDown(build(side)).samples.map(({ packCurrent }) => packCurrent)) / STRINGS;
    const rated = { ...side, cell: { ...CELL, maxCurrent: most * share } };
    const codes = runDown(build(rated)).warnings.map(({ code }) => code);
    expect(codes.includes("cell-current-high")).toBe(noted);
  });

  it("the cut-off in Match lies at the same voltage", () => {
    const input = (cells: typeof side) => ({
      ...PANE_CRAWLER,
      pack: { ...cells, cellResistance: cells.cell.resistance, openCircuitVoltage: 4 },
    });
    expect(cutOffVoltage(input(side), CELL)).toBeCloseToRelative(cutOffVoltage(input(one), WHOLE), 1e-6);
  });

  it("the cells' limits are used to the same part", () => {
    const at = (cells: typeof side) =>
      limitsOf({ ...KNOWN, build: { ...KNOWN.build, pack: cells } }).limits.filter(({ key }) =>
        key.startsWith("cell"),
      );
    const [a, b] = [at(side), at(one)];
    expect(a.map(({ key }) => key)).toEqual(["cell-current", "cell-voltage"]);
    a.forEach(({ ratio }, i) => {
      expect(ratio).toBeCloseToRelative(b[i].ratio ?? 0, 1e-9);
    });
    expect(a[0].value).toBeCloseToRelative((b[0].value ?? 0) / STRINGS, 1e-9);
  });

  it("sets of a search run as long and break the same limits, some the cell's rating and some not", () => {
    const rated = (cell: typeof CELL, maxCurrent: number) => ({ ...cell, maxCurrent });
    const packs = [
      pack("side", 2, { ...side, cell: rated(CELL, 2.5) }),
      pack("one", 2, { ...one, cell: rated(WHOLE, 7.5) }),
    ];
    const prepared = prepare(question({ packs, wants: { ...question().wants, leastTime: null } }));
    const chunk = solveChunk(prepared, 0, prepared.count);
    const bit = 1 << PLACE.cellCurrent;
    const sets = Array.from({ length: prepared.count }, (_, index) => index);
    const asText = sets.map((index) => JSON.stringify(placesOf(prepared.radix, index)));
    const pairs = sets.flatMap((index) => {
      const places = placesOf(prepared.radix, index);
      return places.pack === 0 ? [[index, asText.indexOf(JSON.stringify({ ...places, pack: 1 }))]] : [];
    });
    const broken = pairs.map(([a, b]) => {
      expect(chunk.suction[a]).toBeCloseToRelative(chunk.suction[b], 1e-9);
      expect(timeAlone(prepared, a)).toBeCloseToRelative(timeAlone(prepared, b), 1e-6);
      expect(chunk.broken[a]).toBe(chunk.broken[b]);
      return (chunk.broken[a] & bit) > 0;
    });
    expect(new Set(broken)).toEqual(new Set([true, false]));
  });
});
