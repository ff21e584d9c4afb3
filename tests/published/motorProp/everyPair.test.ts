// Source: open motor and propeller test data by StrawsonDesign, MIT (tests/fixtures/motor-prop-two-voltages/SOURCE.md). Every pair of its motors and propellers by its own C_T, C_P, K_v and R, one search
// against the prediction of each as a build.
import { describe, expect, it } from "vitest";
import { FLAG } from "#shared/decide/choose/columns.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import {
  AIR,
  blades,
  coefficientsOf,
  constantsOf,
  flatPack,
  fullRow,
  machine,
  read,
  SUPPLY,
  searched,
} from "#tests/support/propellerByHand.ts";
import {
  DIAMETER,
  isFull,
  isTurned,
  motors,
  propellers,
  rows,
  type SweepRow,
} from "#tests/support/propellerSweeps.ts";

describe("every published motor with every published propeller at every voltage read at 11.1 V, all in one search", () => {
  const rho = prepare(
    searched({
      motors: [machine("g", 0.0055, 0.2)],
      propellers: [blades("5", 0.1, 0.1)],
      packs: [flatPack(7)],
    }),
  ).air.density;
  /** Told by their rows at 7.4 V: the lightest and the heaviest load. */
  const told = motors.flatMap((code) => {
    const own = propellers
      .filter((each) => !isTurned(code, each))
      .flatMap((each): SweepRow[] => {
        const row = fullRow(code, each, "7.4");
        return row ? [row] : [];
      })
      .map(read)
      .sort((a, b) => a.amps - b.amps);
    const last = own.at(-1);
    return own.length < 2 || !last ? [] : [{ code, ...constantsOf(own[0], last) }];
  });
  const open = propellers.flatMap((code) => {
    const row = fullRow("g", code, "7.4");
    const g = told.find((each) => each.code === "g");
    return row && g ? [{ code, ...coefficientsOf(read(row), g.k, rho) }] : [];
  });
  const volts = [
    ...new Set(rows.filter((row) => row.V_nominal === "11.1" && isFull(row)).map((row) => Number(row.V))),
  ];
  const asked = searched({
    motors: told.map(({ code, k, resistance }) => machine(code, k, resistance)),
    propellers: open.map(({ code, ct, cp }) => blades(code, ct, cp)),
    packs: volts.map(flatPack),
  });
  const prepared = prepare(asked);
  const chunk = solveChunk(prepared, 0, prepared.count);
  const { charge: _all, ...fixed } = asked.fixed;
  const builds = told.flatMap(({ k, resistance }, m) =>
    open.flatMap(({ ct, cp }, p) =>
      volts.map((openCircuitVoltage, v) => ({
        index: (m * open.length + p) * volts.length + v,
        input: {
          air: AIR,
          rotor: {
            kind: "propeller" as const,
            diameter: DIAMETER,
            thrust: [ct, 0] as [number, number],
            power: [cp, 0] as [number, number],
            referenceReynolds: 40_000,
            chord: DIAMETER / 10,
          },
          motor: {
            kv: 60 / (2 * Math.PI * k),
            resistance,
            frictionTorque: 0,
            viscousTorque: 0,
            thermalResistance: null,
          },
          pack: { series: 1, parallel: 1, openCircuitVoltage, cellResistance: 0, wireResistance: 0 },
          supply: { ...SUPPLY, duty: 1 },
          vehicle: {
            ...fixed.vehicle,
            mass: fixed.vehicle.mass + 0.04 + 0.004 + 0.046,
            wheelFriction: 0.7,
            skirtFriction: 0,
            skirtShare: 0,
          },
        },
      })),
    ),
  );

  it("has as many sets as there are combinations, each with what /predict has for it as a build, to 1e-9", () => {
    expect(told.length).toBeGreaterThanOrEqual(6);
    expect(open.length).toBe(8);
    expect(prepared.count).toBe(builds.length);
    for (const { index, input } of builds) {
      const { point, suction, worst } = predictAny(input, []);
      expect(chunk.flags[index] & FLAG.unsolved).toBe(0);
      expect(chunk.speed[index]).toBeCloseToRelative(point?.speed ?? Number.NaN, 1e-9);
      expect(chunk.suction[index]).toBeCloseToRelative(suction, 1e-9);
      expect(chunk.packCurrent[index]).toBeCloseToRelative(point?.packCurrent ?? Number.NaN, 1e-9);
      expect(chunk.driving[index]).toBeCloseToRelative(worst.driving.margin ?? Number.NaN, 1e-9);
    }
  });

  it("ranks them by margin as those predictions do", () => {
    const predicted = builds.map(
      ({ index, input }) => [predictAny(input, []).worst.driving.margin ?? 0, index] as const,
    );
    const best = [...predicted].sort((a, b) => b[0] - a[0]).slice(0, 20);
    const searchedBest = Array.from(chunk.driving, (margin, index) => [margin, index] as const)
      .sort((a, b) => b[0] - a[0])
      .slice(0, 20);
    expect(searchedBest.map(([, index]) => index)).toEqual(best.map(([, index]) => index));
  });
});
