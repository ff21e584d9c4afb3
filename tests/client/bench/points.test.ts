import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { countInWords } from "#client/views/bench/import/countWords.ts";
import { guessMapping } from "#client/views/bench/import/mapping.ts";
import { missingRoles } from "#client/views/bench/import/missing.ts";
import { readCsv, readPoints } from "#tests/support/importing.ts";

const fixture = (path: string) => readFileSync(new URL(`../../fixtures/${path}`, import.meta.url), "utf8");

function request(text: string, commonSpeed = "") {
  const table = readCsv(text);
  return { table, mapping: guessMapping(table.header), commonSpeed, holeKinds: 0 };
}

describe("readPoints, measured data whole", () => {
  // Row counts: lines of the files, one header each.
  it.each([
    ["fan-three-speeds/600rpm.csv", 43],
    ["fan-three-speeds/800-1000rpm.csv", 47],
    ["small-blower/binned.csv", 40],
  ] as const)("every line of %s becomes a point", (path, count) => {
    const points = readPoints(request(fixture(path)));
    expect(points.bad).toEqual([]);
    expect(points.good).toHaveLength(count);
  });

  it("keeps number and unit as the file has them, and the speed in rad/s beside", () => {
    const [first] = readPoints(request(fixture("fan-three-speeds/600rpm.csv"))).good;
    expect(first.row.cells).toEqual({
      speed: "9.935035 rev/s",
      flow: "0.001708629 m³/s",
      pressure: "63.50206 Pa",
      density: "1.17343 kg/m³",
    });
    expect(first.speed).toBeCloseToRelative(9.935035 * 2 * Math.PI, 1e-12);
  });
});

describe("readPoints, lines that can't be read", () => {
  const text =
    "n,Q,p\n800,1,2\n800,x,2\n800,1\n800,1,2,3\n800,,2\n-800,1,2\n800,-1,2\n800,1 L/min,2\n800,1 mm,2\n";
  const points = readPoints(request(text));

  it("skips each with its line and its reason", () => {
    expect(points.bad.map(({ line, reason }) => [line, reason])).toEqual([
      [3, 'flow "x" is no number'],
      [4, "2 cells, the header has 3"],
      [5, "4 cells, the header has 3"],
      [6, "flow is empty"],
      [7, "speed must be more than 0, read -800 rpm"],
      [8, "flow must not be below 0, read -1 L/s"],
      [10, 'flow "1 mm" can\'t be read'],
    ]);
  });

  it("takes a cell that carries its own unit", () => {
    expect(points.good.map(({ line, row }) => [line, row.cells.flow])).toEqual([
      [2, "1 L/s"],
      [9, "1 L/min"],
    ]);
  });

  it("counts both in words", () => {
    expect(countInWords(points)).toBe("Two lines can be read, seven lines are skipped.");
    expect(countInWords({ ...points, skipped: 0 })).toBe("Two lines can be read, none is skipped.");
  });
});

describe("readPoints and missingRoles, where no column has the speed", () => {
  it("asks for one speed for all", () => {
    expect(missingRoles(request("Q,p\n1,2\n"))).toEqual([
      "Choose the column with the speed, or give one speed for all points.",
    ]);
  });

  it("gives every point the one speed", () => {
    const points = readPoints(request("Q,p\n1,2\n2,1\n", "24000"));
    expect(points.good.map(({ row }) => row.cells.speed)).toEqual(["24000 rpm", "24000 rpm"]);
  });

  it("names what else is not chosen, and a quantity chosen twice", () => {
    const { table } = request("a,b\n1,2\n");
    const speed = { role: "speed", unit: "rpm" } as const;
    expect(missingRoles({ table, mapping: [speed, speed], commonSpeed: "", holeKinds: 0 })).toEqual([
      "Choose the column with the pressure.",
      "Choose the column with the flow.",
      "Two columns are speed; leave one of them out.",
    ]);
  });
});
