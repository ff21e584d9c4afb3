import { describe, expect, it } from "vitest";
import { airFrom, DEFAULT_WEATHER } from "#shared/physics/air.ts";
import type { AtSpeeds, PartialVehicle } from "#shared/physics/partial/input.ts";
import { speedPoints } from "#shared/physics/partial/speedPoint.ts";
import { predict } from "#shared/physics/predict.ts";
import { question } from "#tests/client/rundown/examples.ts";

const { rotor, skirt, vehicle, air, motor, supply, pack } = question.input;
if (!skirt || !("lambda" in rotor)) throw new Error("the example is a ducted rotor on a skirt");
const { lambda: _power, sizeCorrection: _none, ...curve } = rotor;
const blower = (speeds: number[], change: object = {}): AtSpeeds => ({
  turnedBy: "tests",
  speeds,
  air,
  rotor: { kind: "ducted", curve, skirt: { ...skirt, ...change } },
});
const unsure: PartialVehicle = { ...vehicle, wheelFriction: null };

describe("a rotor at a given speed", () => {
  it("at the speed that the whole prediction finds: has its flow, pressure and pull", () => {
    const { cell, ...wiring } = pack;
    const whole = { air, rotor, motor, supply, skirt, vehicle };
    const known = { ...wiring, openCircuitVoltage: 3.9, cellResistance: cell.resistance };
    const { point, suction } = predict({ ...whole, pack: known });
    const [at] = speedPoints(blower([point?.speed ?? 0]), unsure);
    expect(at.pressure).toBeCloseToRelative(point?.pressure ?? 0, 1e-9);
    expect(at.flow).toBeCloseToRelative(point?.flow ?? 0, 1e-9);
    expect(at.suction).toBeCloseToRelative(suction, 1e-9);
  });

  it("on a sealed lip: makes its blocked pressure ½ρu²ψ₀, by hand", () => {
    const [at] = speedPoints(blower([2000], { gap: 0, roughness: 0, openings: [] }), unsure);
    const density = airFrom(air).density;
    expect(at.pressure).toBeCloseToRelative(0.5 * density * (2000 * 0.022) ** 2 * 1.05, 1e-12);
    expect(at.flow).toBe(0);
  });

  it("through openings alone, whose law is quadratic as the fan's: flow rises with the speed, pressure with its square", () => {
    // fan laws on a quadratic resistance (Eck, from memory); a hole has no Reynolds number here
    const holes = { gap: 0, roughness: 0, openings: [{ area: 1.5e-4 }] };
    const [slow, fast] = speedPoints(blower([1500, 3000], holes), unsure);
    expect((fast.flow ?? 0) / (slow.flow ?? 0)).toBeCloseToRelative(2, 1e-9);
    expect((fast.pressure ?? 0) / (slow.pressure ?? 0)).toBeCloseToRelative(4, 1e-9);
  });

  it("of a propeller: thrust rises with the square of the speed, T = C_T·ρn²D⁴", () => {
    const prop: AtSpeeds = {
      turnedBy: "tests",
      speeds: [500, 1000],
      air: DEFAULT_WEATHER,
      rotor: {
        kind: "propeller",
        curve: {
          kind: "propeller",
          diameter: 0.127,
          thrust: [0.12, 0],
          referenceReynolds: 5e4,
          chord: 0.0127,
        },
      },
    };
    const [slow, fast] = speedPoints(prop, unsure);
    const n = 500 / (2 * Math.PI);
    expect(slow.suction).toBeCloseToRelative(
      0.12 * airFrom(DEFAULT_WEATHER).density * n ** 2 * 0.127 ** 4,
      1e-9,
    );
    expect(fast.suction / slow.suction).toBeCloseToRelative(4, 1e-9);
    expect([slow.flow, slow.pressure]).toEqual([null, null]);
  });
});
