import { describe, expect, it } from "vitest";
import { operatingPoints } from "#shared/physics/operatingPoint.ts";
import { assembleMachine } from "#shared/physics/point/machine.ts";
import { CASE, RESULT, solveCase } from "#shared/physics/point/newton.ts";
import { machineOf, runSweep, sweepTables, writeCase, writeStart } from "#tests/benchmarks/sweepCases.ts";

/**
 * A sweep of 1 000 000 coupled operating points with converged values that were computed outside this project
 * (index, φ, ω [rad/s], Q [m³/s], Δp [Pa]; three sums), agreement to 1e-9 asked.
 */
const SAMPLE = [
  [17, 7.751899365158e-2, 1.807790215706e3, 4.402567571332e-4, 3.915316873064],
  [5016, 1.564658059101e-1, 1.807520677175e3, 8.884900900944e-4, 3.531340950197e1],
  [10015, 5.281956806839e-2, 4.51490545555e3, 7.491924265716e-4, 2.442641575475e2],
  [15014, 1.775482673753e-1, 3.380923060695e3, 1.885825912454e-3, 1.376399093585e1],
  [20013, 7.913793629155e-2, 5.404615702163e3, 1.34369101207e-3, 1.223503341101e1],
  [25012, 1.728559724615e-1, 5.380059434503e3, 2.921603901786e-3, 1.000484610934e2],
  [30011, 7.584792900063e-2, 7.40270301236e3, 1.76394047708e-3, 1.091742059476e2],
  [35010, 1.106565783448e-1, 7.352581324662e3, 2.556035884224e-3, 1.494108587048e3],
  [994818, 1.756505792717e-1, 1.212788455081e4, 6.692440414683e-3, 2.589426295816e2],
] as const;
const SUMS = { pressure: 1.1809641484e9, speed: 3.2838988123e9, flow: 7.4499870173e3 };
/** the printed digits of the sums end at 1e-11 relative, of the sample at 1e-12 */
const AGREED = 1e-9;

const tables = sweepTables();

function generalPoint(index: number) {
  const { leak, ...parts } = machineOf(tables, index);
  const machine = assembleMachine({ ...parts, ambient: 293.15 });
  return { points: operatingPoints(machine, leak), leak };
}

describe("the operating point, on the sample rows of the sweep", () => {
  it.each(SAMPLE)(
    "index %s agrees to 1e-9 by the scan of every crossing",
    (index, phi, speed, flow, pressure) => {
      const { points } = generalPoint(index);
      expect(points).toHaveLength(1);
      expect(points[0].stable).toBe(true);
      expect(points[0].phi).toBeCloseToRelative(phi, AGREED);
      expect(points[0].speed).toBeCloseToRelative(speed, AGREED);
      expect(points[0].flow).toBeCloseToRelative(flow, AGREED);
      expect(points[0].pressure).toBeCloseToRelative(pressure, AGREED);
    },
  );

  it.each(SAMPLE)("index %s agrees to 1e-9 by the fast solver", (index, phi, speed, flow, pressure) => {
    const [c, result] = [new Float64Array(CASE.length), new Float64Array(RESULT.length)];
    writeCase(c, tables, index);
    writeStart(c, result);
    expect(solveCase(c, result)).toBe(true);
    expect(result[RESULT.phi]).toBeCloseToRelative(phi, AGREED);
    expect(result[RESULT.speed]).toBeCloseToRelative(speed, AGREED);
    expect(result[RESULT.flow]).toBeCloseToRelative(flow, AGREED);
    expect(result[RESULT.pressure]).toBeCloseToRelative(pressure, AGREED);
  });
});

describe("the sweep, whole", () => {
  it("has the three sums of the whole million to 1e-9", () => {
    const sums = runSweep(tables);
    expect(sums.pressure).toBeCloseToRelative(SUMS.pressure, AGREED);
    expect(sums.speed).toBeCloseToRelative(SUMS.speed, AGREED);
    expect(sums.flow).toBeCloseToRelative(SUMS.flow, AGREED);
  });
});
