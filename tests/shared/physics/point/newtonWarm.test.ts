import { describe, expect, it } from "vitest";
import { operatingPoints } from "#shared/physics/operatingPoint.ts";
import { assembleMachine } from "#shared/physics/point/machine.ts";
import { CASE, RESULT, solveCase } from "#shared/physics/point/newton.ts";
import { solveSealedCase, solveWarmCase, WARM, WARM_RESULT } from "#shared/physics/point/newtonWarm.ts";
import { machineOf, sweepTables, writeCase, writeStart } from "#tests/benchmarks/sweepCases.ts";

const tables = sweepTables();
const AGREED = 1e-12;
const COPPER = 0.00393;

/** A combination of the sweep, its winding taken at 20 °C in air of 20 °C. */
function caseOf(index: number, thermalResistance: number) {
  const { motor, pack, supply } = machineOf(tables, index);
  const c = new Float64Array(WARM.length);
  writeCase(c, tables, index);
  c[WARM.windingResistance] = motor.resistance;
  c[WARM.heating] = motor.resistance * COPPER * thermalResistance;
  const packResistance = pack.series * pack.cellResistance + pack.wireResistance;
  c[WARM.circuitResistance] = supply.driverResistance + supply.duty ** 2 * packResistance;
  c[WARM.sizeMost] = 1;
  const start = new Float64Array(WARM_RESULT.length);
  writeStart(c, start);
  start[WARM_RESULT.speed] = 4000;
  return { c, start };
}

describe("the solver for warm windings", () => {
  it("equals the sweep's solver where the winding stays cold", () => {
    for (let index = 17; index < 1_000_000; index += 49_990) {
      const { c, start } = caseOf(index, 0);
      const [cold, result] = [new Float64Array(CASE.length), new Float64Array(RESULT.length)];
      writeCase(cold, tables, index);
      writeStart(cold, result);
      expect(solveCase(cold, result)).toBe(true);
      expect(solveWarmCase(c, start)).toBe(true);
      for (const name of ["phi", "speed", "flow", "pressure", "gapVelocity"] as const)
        expect(start[WARM_RESULT[name]]).toBeCloseToRelative(result[RESULT[name]], AGREED);
    }
  });

  it("equals the scan of every crossing where the winding settles warm", () => {
    for (let index = 17; index < 1_000_000; index += 49_990) {
      const thermalResistance = 4;
      const { air, leak, motor, ...parts } = machineOf(tables, index);
      const machine = assembleMachine({
        ...parts,
        motor: { ...motor, thermalResistance },
        air,
        ambient: 293.15,
      });
      const [point] = operatingPoints(machine, leak);
      const { c, start } = caseOf(index, thermalResistance);
      const through = point.flow - c[WARM.openingConductance] * Math.sqrt(point.pressure);
      start[WARM_RESULT.phi] = 0.9 * point.phi;
      start[WARM_RESULT.speed] = 1.1 * point.speed;
      start[WARM_RESULT.gapVelocity] = (1.1 * through) / c[WARM.gapArea];
      expect(solveWarmCase(c, start)).toBe(true);
      expect(start[WARM_RESULT.speed]).toBeCloseToRelative(point.speed, AGREED);
      expect(start[WARM_RESULT.pressure]).toBeCloseToRelative(point.pressure, AGREED);
      expect(start[WARM_RESULT.current]).toBeCloseToRelative(point.current, AGREED);
      expect(start[WARM_RESULT.windingResistance]).toBeCloseToRelative(point.windingResistance, AGREED);
    }
  });

  it("meets its equations to 1e-12 with nothing to compare it with", () => {
    const { c, start } = caseOf(523_456, 6);
    expect(solveWarmCase(c, start)).toBe(true);
    const [k, speed, current] = [
      c[WARM.torqueConstant],
      start[WARM_RESULT.speed],
      start[WARM_RESULT.current],
    ];
    const winding = start[WARM_RESULT.windingResistance];
    const temperatureRise = 6 * current ** 2 * winding;
    expect(winding).toBeCloseToRelative(c[WARM.windingResistance] * (1 + COPPER * temperatureRise), AGREED);
    expect(current * (winding + c[WARM.circuitResistance])).toBeCloseToRelative(
      c[WARM.drivingVoltage] - k * speed,
      AGREED,
    );
  });
});

describe("the solver for sealed skirts", () => {
  it("equals the scan, where flow is 0", () => {
    const thermalResistance = 4;
    const { air, motor, ...parts } = machineOf(tables, 400_017);
    const machine = assembleMachine({
      ...parts,
      motor: { ...motor, thermalResistance },
      air,
      ambient: 293.15,
    });
    const [point] = operatingPoints(machine, []);
    const { c, start } = caseOf(400_017, thermalResistance);
    expect(solveSealedCase(c, start)).toBe(true);
    expect(start[WARM_RESULT.flow]).toBe(0);
    expect(start[WARM_RESULT.speed]).toBeCloseToRelative(point.speed, AGREED);
    expect(start[WARM_RESULT.pressure]).toBeCloseToRelative(point.pressure, AGREED);
  });
});
