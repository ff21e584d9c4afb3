import { describe, expect, it } from "vitest";
import { operatingPoints } from "#shared/physics/operatingPoint.ts";
import { assembleMachine } from "#shared/physics/point/machine.ts";
import { CASE, RESULT, solveCase } from "#shared/physics/point/newton.ts";
import { leakFlow } from "#shared/physics/restriction/leak.ts";
import { machineOf, sweepTables, writeCase, writeStart } from "#tests/benchmarks/sweepCases.ts";

const tables = sweepTables();

describe("solveCase, against the general laws and the scan of every crossing", () => {
  it("leaves a flow within 1e-9 of the leak's own in 20 000 combinations, and finds the scan's crossing", () => {
    const [c, result] = [new Float64Array(CASE.length), new Float64Array(RESULT.length)];
    for (let index = 0; index < 1_000_000; index += 50) {
      writeCase(c, tables, index);
      writeStart(c, result);
      expect(solveCase(c, result)).toBe(true);
      const { leak, ...parts } = machineOf(tables, index);
      const difference = leakFlow(leak, parts.air, result[RESULT.pressure]) / result[RESULT.flow] - 1;
      if (!(Math.abs(difference) < 1e-9)) expect.fail(`index ${index}: flow off by ${difference}`);
      if (index % 5000 !== 0) continue;
      const points = operatingPoints(assembleMachine({ ...parts, ambient: 293.15 }), leak);
      expect(points.at(-1)?.phi).toBeCloseToRelative(result[RESULT.phi], 1e-11);
    }
  });
});
