import type { Answered, Track } from "#client/views/rundown/answer.ts";
import type { Question } from "#client/views/rundown/question.ts";
import type { Fall, Sample } from "#shared/physics/rundown.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

/** The worked example of docs/method/run-down.md: an invented crawler for glasshouse panes. */
export const question: Question = {
  windingEstimated: false,
  keep: null,
  units: { pressure: "Pa", thrust: "g" },
  joints: null,
  named: [
    { key: "at 180", title: "Ceiling", name: "the ceiling", angle: 180 },
    { key: "at 90", title: "Wall", name: "the wall", angle: 90 },
  ],
  input: {
    air: { temperature: 293.15, pressure: 101325, humidity: 0.5 },
    rotor: {
      diameter: 0.044,
      psi: [1.05, -1.5, -32],
      lambda: [0.022, 1.1],
      phiMin: 0,
      phiMax: 0.16,
      sizeCorrection: null,
    },
    motor: {
      kv: 4900,
      resistance: 0.19,
      frictionTorque: 6e-4,
      viscousTorque: 0,
      thermalResistance: 8,
      thermalTimeConstant: 40,
    },
    pack: {
      series: 2,
      parallel: 1,
      wireResistance: 0.014,
      cell: {
        capacity: 3600,
        minimumVoltage: 3,
        resistance: 0.026,
        curve: [
          [0, 3],
          [0.05, 3.4],
          [0.3, 3.65],
          [0.7, 3.85],
          [1, 4.18],
        ],
      },
    },
    supply: { duty: 1, driverResistance: 0, auxCurrent: 0.35 },
    skirt: {
      perimeter: 0.36,
      area: 0.008,
      gap: 0.0006,
      land: 0.003,
      roughness: 0,
      openings: [],
      measuredLeak: null,
    },
    vehicle: { ...PANE_CRAWLER.vehicle, mass: 0.85 },
    startCharge: 1,
    targetMargin: 1.5,
  },
};

const sample = (time: number, cellVoltage: number): Sample => ({
  time,
  charge: 1 - time / 600,
  packVoltage: 2 * cellVoltage - 0.1,
  cellVoltage,
  rpm: 30_000,
  pressure: 2000,
  suction: 16,
  packCurrent: 6,
  windingTemperature: 313.15,
});

export const toTheEnd: Fall = { time: null, packVoltage: null, state: "holds-to-the-end" };
export const never: Fall = { time: null, packVoltage: null, state: "never-held" };
export const falls = (time: number, packVoltage: number): Fall => ({ time, packVoltage, state: "falls" });

export const track = (name: string, holds: Fall, target: Fall = holds): Track => ({
  key: name,
  title: name,
  name,
  angle: 90,
  holds,
  target,
  margins: [2, 1.5, 1],
});

/** A run of ten minutes whose cell falls from 4 V over 3.6 V, halfway, to 3 V. Invented. */
export const answered = (tracks: readonly Track[], change: Partial<Answered> = {}): Answered => ({
  end: { time: 600, reason: "minimum-voltage" },
  samples: [sample(0, 4), sample(300, 3.6), sample(600, 3)],
  over: null,
  warnings: [],
  tracks,
  minimumVoltage: 3,
  pack: { capacity: 3600, parallel: 1 },
  targetMargin: 1.5,
  winding: "followed",
  windingEstimated: false,
  cycled: false,
  kept: null,
  ...change,
});
