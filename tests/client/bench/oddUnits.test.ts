import { describe, expect, it } from "vitest";
import { KINDS } from "#client/views/bench/record/kinds.ts";
import { oddUnits } from "#client/views/bench/running/oddUnits.ts";

const typed = (value: number, unit: string) => ({ value, unit });
const thrusts = (...readings: readonly [number, string][]) =>
  oddUnits(
    readings.map(([value, unit]) => ({ thrust: typed(value, unit) })),
    readings.map((_, i) => 10 + i),
    KINDS.thrust.columns,
  );

describe("a reading whose unit looks like a slip", () => {
  it("grams meant, newtons written out since the row before: that row is named, with a reading of the other unit", () => {
    const found = thrusts([45, "g"], [1, "N"], [172, "N"]);
    expect(found).toEqual([{ key: 12, message: "Thrust: 172\u202fN beside 45\u202fg. Is the unit right?" }]);
  });

  it("two units whose readings are alike: nothing is said", () => {
    expect(thrusts([45, "g"], [0.5, "N"], [60, "g"])).toEqual([]);
  });

  it("one unit over a wide range, and a zero: nothing is said", () => {
    expect(thrusts([0, "N"], [0.01, "N"], [40, "N"])).toEqual([]);
  });

  it("a row that is set aside: not compared", () => {
    const rows = [{ thrust: typed(45, "g") }, { thrust: typed(172, "N"), setAside: "slip" }];
    expect(oddUnits(rows, [1, 2], KINDS.thrust.columns)).toEqual([]);
  });
});
