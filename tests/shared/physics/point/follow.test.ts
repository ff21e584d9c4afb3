import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assemble } from "#shared/physics/assembly.ts";
import { operatingPoint, operatingPoints } from "#shared/physics/operatingPoint.ts";
import { type Followed, followCrossing } from "#shared/physics/point/follow.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

const pack = {
  series: 2,
  parallel: 1,
  openCircuitVoltage: 3.8,
  cellResistance: 0.026,
  wireResistance: 0.014,
};
const warm = { ...PANE_CRAWLER, pack, motor: { ...PANE_CRAWLER.motor, thermalResistance: 8 } };
const leaky = { coefficient: 1.7e-4, exponent: 0.55, density: 1.2, viscosity: 1.81e-5 };
const sized = { testedDiameter: 0.038, testedTipSpeed: 60 };

const known = (phi: number, winding: number): Followed => ({ phi, winding, flow: 0, pressure: 0, slope: 0 });

describe("followCrossing", () => {
  it.each([
    ["a warm winding", warm],
    ["a cold winding", { ...warm, motor: PANE_CRAWLER.motor }],
    ["a winding at a given temperature", { ...warm, motor: { ...warm.motor, windingTemperature: 350 } }],
    ["a measured leak", { ...warm, skirt: { ...warm.skirt, measuredLeak: leaky } }],
    ["a size correction", { ...warm, rotor: { ...warm.rotor, sizeCorrection: sized } }],
    ["openings beside the lip", { ...warm, skirt: { ...warm.skirt, openings: [{ area: 2e-5 }] } }],
  ])(
    "with %s, from a neighbour of another voltage, gap and mass flow: the very point that the scan finds",
    (_, input) => {
      const before = assemble(input);
      const start = operatingPoint(operatingPoints(before.machine, before.leak));
      const from = known(start?.phi ?? 0, start?.windingResistance ?? 0);
      const shift = fc.double({ min: 0.9, max: 1.1, noNaN: true });
      fc.assert(
        fc.property(shift, shift, shift, (volts, gap, psi) => {
          const changed = {
            ...input,
            pack: { ...pack, openCircuitVoltage: pack.openCircuitVoltage * volts },
            skirt: { ...input.skirt, gap: input.skirt.gap * gap },
            rotor: { ...input.rotor, psi: input.rotor.psi.map((c) => c * psi) },
          };
          const { machine, leak } = assemble(changed);
          const point = operatingPoint(operatingPoints(machine, leak));
          const found = known(0, 0);
          expect(followCrossing(machine, leak, from, found)).toBe(true);
          expect(found.phi).toBeCloseToRelative(point?.phi ?? Number.NaN, 1e-10);
          expect(found.flow).toBeCloseToRelative(point?.flow ?? Number.NaN, 1e-10);
          expect(found.pressure).toBeCloseToRelative(point?.pressure ?? Number.NaN, 1e-9);
          expect(found.winding).toBeCloseToRelative(point?.windingResistance ?? Number.NaN, 1e-10);
        }),
      );
    },
  );

  it("where the motor does not turn, or the crossing lies far from the known one: finds none", () => {
    const stuck = assemble({ ...warm, motor: { ...warm.motor, frictionTorque: 1 } });
    expect(followCrossing(stuck.machine, stuck.leak, known(0.1, 0.19), known(0, 0))).toBe(false);
    const { machine, leak } = assemble(warm);
    const phi = operatingPoint(operatingPoints(machine, leak))?.phi ?? 0;
    expect(followCrossing(machine, leak, known(0.6 * phi, 0.19), known(0, 0))).toBe(false);
  });
});
