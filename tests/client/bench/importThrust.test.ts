import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { guessMapping } from "#client/views/bench/import/mapping.ts";
import { missingRoles } from "#client/views/bench/import/missing.ts";
import type { PointsRequest } from "#client/views/bench/import/points.ts";
import { headOf } from "#client/views/bench/import/tests.ts";
import { exportCsv } from "#client/views/bench/list/exportCsv.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import { readCsv, readPoints } from "#tests/support/importing.ts";
import { THRUST } from "./examples.ts";

// Source: open motor and propeller test data by StrawsonDesign, MIT (tests/fixtures/motor-prop-two-voltages/SOURCE.md).
const sweep = readFileSync(
  new URL("../../fixtures/motor-prop-two-voltages/rows.csv", import.meta.url),
  "utf8",
);

function request(text: string): PointsRequest {
  const table = readCsv(text);
  const mapping = guessMapping(table.header, "thrust");
  return { kind: "thrust", table, mapping, commonSpeed: "", holeKinds: 0 };
}

describe("a thrust sweep from CSV", () => {
  it("of a published file: finds thrust in gf, current and speed by their headers", () => {
    const roles = guessMapping(readCsv(sweep).header, "thrust").map(({ role, unit }) =>
      `${role} ${unit}`.trim(),
    );
    expect(roles.slice(5)).toEqual(["thrust gf", "voltage V", "current A", "speed rpm"]);
  });

  it("of a published file: skips a line without speed, by its reason, and reads all others", () => {
    const points = readPoints(request(sweep));
    const still = sweep
      .trim()
      .split("\n")
      .filter((line) => line.endsWith(",0")).length;
    expect(still).toBeGreaterThan(0);
    expect(points.bad).toHaveLength(still);
    expect(points.bad[0].reason).toMatch(/speed must be more than 0/);
    expect(points.good[0].row.cells).toMatchObject({
      thrust: "15.172 gf",
      current: "0.51137 A",
      speed: "3421 rpm",
    });
  });

  it("as it was exported: gives every row and the fields above it back", () => {
    const text = exportCsv(THRUST, { setUp: true });
    const { good, bad } = readPoints(request(text));
    expect(bad).toEqual([]);
    const cells = writeDraft(THRUST).rows.map((row) =>
      Object.fromEntries(Object.entries(row.cells).filter(([, cell]) => cell !== "")),
    );
    expect(good.map(({ row }) => row.cells)).toEqual(cells);
    expect(good.map(({ row }) => row.aside)).toEqual([null, null, "stand shook"]);
    expect(headOf(readCsv(text).head, "thrust").fields).toMatchObject({
      rotor: "p5",
      diameter: "127 mm",
      motor: "m1",
    });
  });

  it("without a column of thrust or of speed: asks for it", () => {
    expect(missingRoles(request("a,b\n1,2\n"))).toEqual([
      "Choose the column with the speed.",
      "Choose the column with the thrust.",
    ]);
  });

  it("as a curve: takes no thrust for anything, as before", () => {
    expect(guessMapping(["rpm", "thrust [g]"])[1].role).toBe("ignore");
  });
});
