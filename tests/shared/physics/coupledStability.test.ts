import { describe, expect, it } from "vitest";
import { type Crossing, operatingPoint, operatingPoints } from "#shared/physics/operatingPoint.ts";
import { assembleMachine } from "#shared/physics/point/machine.ts";
import type { Restriction } from "#shared/physics/restriction/restriction.ts";

const AIR = { density: 1.2, viscosity: 1.81e-5 };
const DIAMETER = 0.044;
/** Invented: ψ falls everywhere, so the pressure's slope alone calls every crossing stable; λ falls steeply, then rises. */
const PSI = (phi: number) => 1 - 6 * phi * phi;
const LAMBDA = (phi: number) => 0.91 - 6 * phi + 10 * phi * phi;
const VOLTAGE = 7.6;
const K = 60 / (2 * Math.PI * 4900);

function crossingsOf(resistance: number, laminar: number): Crossing[] {
  const machine = assembleMachine({
    rotor: {
      diameter: DIAMETER,
      psi: [1, 0, -6],
      lambda: [0.91, -6, 10],
      phiMin: 0,
      phiMax: 0.4,
      sizeCorrection: null,
    },
    motor: { kv: 4900, resistance, frictionTorque: 1e-5, viscousTorque: 0, thermalResistance: null },
    pack: { series: 2, parallel: 1, openCircuitVoltage: 3.8, cellResistance: 0, wireResistance: 0 },
    supply: { duty: 1, driverResistance: 0, auxCurrent: 0 },
    air: AIR,
    ambient: 293.15,
  });
  const slot: Restriction = {
    kind: "measuredLeak",
    coefficient: laminar,
    exponent: 1,
    perimeter: 0.3,
    ...AIR,
  };
  return operatingPoints(machine, [slot]);
}

/** Excess of pressure over the leak's, and of the motor's torque over the rotor's, written out anew. */
function excessAt(resistance: number, laminar: number, flow: number, speed: number) {
  const u = (speed * DIAMETER) / 2;
  const area = (Math.PI / 4) * DIAMETER ** 2;
  const phi = flow / (area * u);
  const pressure = 0.5 * AIR.density * u * u * PSI(phi) - flow / laminar;
  const rotor = 0.5 * AIR.density * area * (DIAMETER / 2) ** 3 * speed ** 2 * LAMBDA(phi);
  return { pressure, torque: (K * (VOLTAGE - K * speed)) / resistance - 1e-5 - rotor };
}

/** Where flow and speed settle from a start, by Euler steps of a made-up inertia of air and rotor. */
function settled(resistance: number, laminar: number, from: { flow: number; speed: number }) {
  let { flow, speed } = from;
  for (let i = 0; i < 1_000_000; i++) {
    const { pressure, torque } = excessAt(resistance, laminar, flow, speed);
    flow += 1e-8 * pressure;
    speed += 4000 * torque;
  }
  return { flow, speed };
}

describe("an operating point that its pressures call stable and speed and flow together do not", () => {
  const [resistance, laminar] = [20, 3.793e-5];
  const crossings = crossingsOf(resistance, laminar);

  it("is one of three crossings, with ψ falling at every one of them", () => {
    expect(crossings).toHaveLength(3);
    for (const { flow, speed } of crossings) {
      const at = excessAt(resistance, laminar, flow, speed);
      expect(Math.abs(at.pressure)).toBeLessThan(1e-6);
      expect(Math.abs(at.torque)).toBeLessThan(1e-9);
    }
  });

  it("is unstable, its neighbours stable, and the operating point the one of largest flow", () => {
    expect(crossings.map(({ stable }) => stable)).toEqual([true, false, true]);
    expect(operatingPoint(crossings)).toBe(crossings[2]);
  });

  it("pushed off it by a thousandth: speed and flow settle at the neighbour on that side", () => {
    const [below, middle, above] = crossings;
    for (const [push, end] of [
      [0.999, below],
      [1.001, above],
    ] as const) {
      const at = settled(resistance, laminar, { flow: middle.flow * push, speed: middle.speed * push });
      expect(at.flow).toBeCloseToRelative(end.flow, 1e-3);
      expect(at.speed).toBeCloseToRelative(end.speed, 1e-3);
    }
  });

  it("where a faster rotor leaves the motor more torque than it takes: unstable as well", () => {
    const weak = crossingsOf(50, 5.909e-5);
    const last = weak[2];
    const at = (share: number) => excessAt(50, 5.909e-5, last.flow, last.speed * share).torque;
    expect(at(1.0001)).toBeGreaterThan(at(0.9999));
    expect(weak.map(({ stable }) => stable)).toEqual([true, false, false]);
  });
});
