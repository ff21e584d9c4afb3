import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { predict } from "#shared/physics/predict.ts";
import { predictPropeller } from "#shared/physics/propeller.ts";
import { type RundownInput, runDown } from "#shared/physics/rundown.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { PANE_CRAWLER, PANE_PROPELLER } from "#tests/support/paneCrawler.ts";

type Curve = [number, number][];
const LINE: Curve = [
  [0, 3.2],
  [1, 4.2],
];
const FLAT: Curve = [
  [0, 3.7],
  [1, 3.7],
];
/** Invented, with the shoulder and the knee of a lithium cell. */
const KNEE: Curve = [
  [0, 3],
  [0.05, 3.4],
  [0.3, 3.65],
  [0.7, 3.85],
  [1, 4.18],
];
const CELL = { capacity: 700, minimumVoltage: 3, resistance: 0.026, curve: KNEE };
const PACK = { series: 2, parallel: 1, wireResistance: 0.014, cell: CELL };

const crawler: RundownInput = { ...PANE_CRAWLER, pack: PACK };
const withCell = (change: Partial<typeof CELL>): RundownInput => ({
  ...crawler,
  pack: { ...PACK, cell: { ...CELL, ...change } },
});

/** k_t = 60/(2π·K_v). */
const K = 60 / (2 * Math.PI * PANE_CRAWLER.motor.kv);
const GRAVITY = 9.80665;

/** Sealed, and a rotor that takes no power: what is left is the motor's own friction. */
function frictionOnly(change: Partial<RundownInput["motor"]>, cell: Partial<typeof CELL>): RundownInput {
  return {
    ...withCell(cell),
    rotor: { ...PANE_CRAWLER.rotor, lambda: [0] },
    skirt: { ...PANE_CRAWLER.skirt, gap: 0 },
    motor: { ...PANE_CRAWLER.motor, viscousTorque: 0, ...change },
  };
}

describe("runDown, at a current that does not change", () => {
  it("of a flat cell under the whole build: ends empty at t = C·z/I, exactly", () => {
    const input = { ...withCell({ curve: FLAT }), startCharge: 0.8 };
    const { series, parallel, wireResistance } = PACK;
    const pack = {
      series,
      parallel,
      wireResistance,
      cellResistance: CELL.resistance,
      openCircuitVoltage: 3.7,
    };
    const { point, suction } = predict({ ...PANE_CRAWLER, pack });
    const { end, samples } = runDown(input);
    expect(end.reason).toBe("empty");
    expect(end.time).toBeCloseToRelative((700 * 0.8) / (point?.packCurrent ?? 0), 1e-10);
    expect(samples[0].rpm).toBeCloseToRelative(point?.rpm ?? 0, 1e-12);
    expect(samples[0].packVoltage).toBeCloseToRelative(point?.packVoltage ?? 0, 1e-12);
    expect(samples[0].suction).toBeCloseToRelative(suction, 1e-10);
  });

  // k·I = M_c at any voltage: t = N_p·C·z/(δ·M_c/k + I_aux).
  it.each([
    [1, 1, 1],
    [0.6, 0.5, 2],
  ])(
    "of friction alone at duty %s from charge %s, %s in parallel: t = N_p·C·z/(δ·M_c/k + I_aux)",
    (duty, startCharge, parallel) => {
      const input = frictionOnly({}, { curve: LINE, minimumVoltage: 0.5 });
      const supply = { ...input.supply, duty };
      const { end } = runDown({ ...input, supply, startCharge, pack: { ...input.pack, parallel } });
      const drawn = (duty * PANE_CRAWLER.motor.frictionTorque) / K + PANE_CRAWLER.supply.auxCurrent;
      expect(end.reason).toBe("empty");
      expect(end.time).toBeCloseToRelative((parallel * 700 * startCharge) / drawn, 1e-10);
    },
  );

  // τ·dΔT/dt = I²R₂₀[1 + α(T_a + ΔT − 293.15)]R_th − ΔT is linear: ΔT = ΔT∞(1 − e^(−κt/τ)), κ = 1 − I²R₂₀αR_th; copper α = 0.00393/K (IEC 60028).
  it("warms the winding along the exponential of a first-order lag", () => {
    const [thermalResistance, thermalTimeConstant] = [300, 40];
    const input = frictionOnly(
      { thermalResistance, thermalTimeConstant },
      { curve: LINE, minimumVoltage: 0.5 },
    );
    const current = PANE_CRAWLER.motor.frictionTorque / K;
    const heat = current ** 2 * PANE_CRAWLER.motor.resistance * thermalResistance;
    const kappa = 1 - 0.00393 * heat;
    const { samples } = runDown(input);
    expect(samples[0].windingTemperature).toBe(293.15);
    for (const { time, windingTemperature } of samples.slice(1)) {
      const rise = (heat / kappa) * -Math.expm1((-kappa * time) / thermalTimeConstant);
      expect(windingTemperature - 293.15).toBeCloseToRelative(rise, 1e-6);
    }
  });
});

describe("runDown, at a current that falls with the voltage", () => {
  // λ = 0 and V_oc = v₀ + v₁z: ω and I are linear in z, so z decays exponentially and every time is a logarithm.
  const viscousTorque = 2e-6;
  const mass = 2.5;
  const input = {
    ...frictionOnly({ viscousTorque }, { curve: LINE, minimumVoltage: 3.3, capacity: 900 }),
    vehicle: { ...PANE_CRAWLER.vehicle, mass },
    angles: [180],
    targetMargin: 1.3,
  };
  const { frictionTorque, resistance } = PANE_CRAWLER.motor;
  const { auxCurrent, driverResistance } = PANE_CRAWLER.supply;
  const fromPack = 2 * 0.026 + 0.014;
  const circuit = resistance + driverResistance + fromPack;
  const speedAt = (z: number) =>
    (2 * (3.2 + z) - fromPack * auxCurrent - (circuit * frictionTorque) / K) /
    (K + (circuit * viscousTorque) / K);
  const drawnAt = (z: number) => (frictionTorque + viscousTorque * speedAt(z)) / K + auxCurrent;
  const slope = drawnAt(1) - drawnAt(0);
  const timeTo = (z: number) => (900 / slope) * Math.log(drawnAt(1) / drawnAt(z));
  /** Inverse of a function that is linear in z. */
  const chargeWhere = (f: (z: number) => number, value: number) => (value - f(0)) / (f(1) - f(0));
  const packVoltageAt = (z: number) => 2 * (3.2 + z) - fromPack * drawnAt(z);
  const answer = runDown(input);

  it("ends where the loaded cell meets its minimum, at the time of the closed form", () => {
    const last = chargeWhere((z) => 3.2 + z - 0.026 * drawnAt(z), 3.3);
    expect(answer.end.reason).toBe("minimum-voltage");
    expect(answer.end.time).toBeCloseToRelative(timeTo(last), 1e-9);
    expect(answer.samples.at(-1)?.cellVoltage).toBeCloseToRelative(3.3, 1e-10);
    expect(answer.samples.at(-1)?.charge).toBeCloseToRelative(last, 1e-8);
  });

  it("lets the ceiling go when ½ρu²ψ₀(A + ½Pℓ) falls to margin·m·g, at the time and voltage of the closed form", () => {
    const { density } = predict({
      ...PANE_CRAWLER,
      pack: { ...PACK, cellResistance: 0, openCircuitVoltage: 3.7 },
    }).air;
    const area = PANE_CRAWLER.skirt.area + 0.5 * 0.36 * 0.003;
    const speedFor = (margin: number) =>
      Math.sqrt((margin * mass * GRAVITY) / (0.5 * density * 1.05 * area)) /
      (PANE_CRAWLER.rotor.diameter / 2);
    const [{ holds, target }] = answer.attitudes;
    for (const [fall, margin] of [
      [holds, 1],
      [target, 1.3],
    ] as const) {
      const z = chargeWhere(speedAt, speedFor(margin));
      expect(z).toBeGreaterThan(0.2);
      expect(z).toBeLessThan(1);
      expect(fall.state).toBe("falls");
      expect(fall.time).toBeCloseToRelative(timeTo(z), 1e-8);
      expect(fall.packVoltage).toBeCloseToRelative(packVoltageAt(z), 1e-9);
    }
  });
});

describe("runDown, of the whole build with a knee in its curve", () => {
  const heavy = { ...crawler, vehicle: { ...PANE_CRAWLER.vehicle, mass: 0.9 } };
  const warming = {
    ...heavy,
    motor: { ...PANE_CRAWLER.motor, thermalResistance: 18, thermalTimeConstant: 35 },
  };

  it.each([
    ["cold", heavy],
    ["settled", { ...heavy, motor: { ...PANE_CRAWLER.motor, thermalResistance: 18 } }],
    ["warming", warming],
  ])("with a %s winding: half the step changes every time by less than 1e-4", (_, input) => {
    const [whole, half] = [1, 0.5].map((step) => runDown({ ...input, step }));
    const times = ({ end, attitudes }: typeof whole) =>
      [end.time, ...attitudes.flatMap(({ holds, target }) => [holds.time, target.time])].filter(
        (time) => time !== null,
      );
    expect(times(half)).toHaveLength(times(whole).length);
    expect(times(whole).length).toBeGreaterThan(2);
    times(whole).forEach((time, i) => {
      expect(time).toBeCloseToRelative(times(half)[i], 1e-4);
    });
  });

  it("draws the charge that its current adds up to, within 1e-6", () => {
    // Every step is a row of so short a run; Simpson's rule over pairs of steps, the trapezoid over the rest.
    const { samples } = runDown({ ...crawler, startCharge: 0.6, step: 0.5 });
    const times = samples.map(({ time }) => time);
    expect(times.slice(0, -1)).toEqual(times.slice(0, -1).map((_, i) => i / 2));
    let drawn = 0;
    let i = 0;
    for (; i + 2 < samples.length - 1; i += 2) {
      const [from, middle, to] = samples.slice(i, i + 3).map(({ packCurrent }) => packCurrent);
      drawn += (from + 4 * middle + to) / 6;
    }
    for (; i + 1 < samples.length; i += 1)
      drawn += ((samples[i].packCurrent + samples[i + 1].packCurrent) / 2) * (times[i + 1] - times[i]);
    const last = samples.at(-1);
    expect(drawn).toBeCloseToRelative(700 * (0.6 - (last?.charge ?? 0)), 1e-6);
  });

  it("answers for wall, ceiling and the worst attitude, the target first and the worst before the wall", () => {
    const { attitudes } = runDown(heavy);
    expect(attitudes.map(({ angle }) => angle).slice(0, 2)).toEqual([90, 180]);
    // Climbing with c_rr takes μ − c_rr: the worst attitude lies at 180° − arctan 1/(μ − c_rr) by its own sinusoid.
    expect(attitudes[2].angle).toBeCloseToRelative(180 - (Math.atan(1 / 0.68) * 180) / Math.PI, 1e-12);
    const [wall, , worst] = attitudes.map(({ holds }) => holds.time ?? Number.POSITIVE_INFINITY);
    expect(worst).toBeLessThan(wall);
    for (const { holds, target } of attitudes)
      expect(target.time ?? 0).toBeLessThanOrEqual(holds.time ?? Number.POSITIVE_INFINITY);
  });

  it("of a light vehicle holds to the end; of a heavy one never held", () => {
    const states = (mass: number) =>
      runDown({ ...crawler, vehicle: { ...PANE_CRAWLER.vehicle, mass } }).attitudes.map(({ holds }) => holds);
    for (const fall of states(0.05))
      expect(fall).toEqual({ time: null, packVoltage: null, state: "holds-to-the-end" });
    for (const fall of states(9))
      expect(fall).toEqual({ time: null, packVoltage: null, state: "never-held" });
  });

  it("of a floor: no suction is needed, it holds to the end", () => {
    const [floor] = runDown({ ...crawler, angles: [0] }).attitudes;
    expect(floor.target.state).toBe("holds-to-the-end");
  });

  it("of a long run: at most about 300 rows, first and last among them, no number infinite", () => {
    const answer = runDown(withCell({ capacity: 12_000 }));
    expect(answer.samples.length).toBeLessThanOrEqual(301);
    expect(answer.samples[0].time).toBe(0);
    expect(answer.samples.at(-1)?.time).toBe(answer.end.time);
    expect(answer.end.time).toBeGreaterThan(1000);
    expectAllFinite(answer);
  });

  it("of a flat cell with a winding that warms: runs into the settled point of the prediction, from the cold one", () => {
    const motor = { ...PANE_CRAWLER.motor, thermalResistance: 15 };
    const flat = withCell({ curve: FLAT });
    const { samples } = runDown({ ...flat, motor: { ...motor, thermalTimeConstant: 5 } });
    const { cell, ...rest } = PACK;
    const pack = { ...rest, cellResistance: cell.resistance, openCircuitVoltage: 3.7 };
    const settled = predict({ ...PANE_CRAWLER, motor, pack }).point;
    const cold = predict({ ...PANE_CRAWLER, pack }).point;
    expect(samples[0].rpm).toBeCloseToRelative(cold?.rpm ?? 0, 1e-10);
    expect(samples.at(-1)?.rpm).toBeCloseToRelative(settled?.rpm ?? 0, 1e-8);
    expect(samples.at(-1)?.windingTemperature).toBeCloseToRelative(settled?.windingTemperature ?? 0, 1e-8);
    expect(settled?.rpm).toBeLessThan(0.99 * (cold?.rpm ?? 0));
  });

  it("tells a winding that gets too hot, with the run's own temperature", () => {
    const motor = { ...PANE_CRAWLER.motor, thermalResistance: 60, thermalTimeConstant: 35 };
    const { warnings, samples } = runDown({ ...crawler, motor });
    const hottest = Math.max(...samples.map(({ windingTemperature }) => windingTemperature));
    expect(hottest).toBeGreaterThan(428.15);
    expect(warnings.map(({ code }) => code)).toContain("winding-too-hot");
    expect(runDown(crawler).warnings.map(({ code }) => code)).not.toContain("winding-too-hot");
  });

  it("tells a cell current above what its maker allows", () => {
    const input = { ...crawler, pack: { ...PACK, cell: { ...CELL, maxCurrent: 1 } } };
    expect(runDown(input).warnings.map(({ code }) => code)).toContain("cell-current-high");
    expect(runDown(crawler).warnings.map(({ code }) => code)).not.toContain("cell-current-high");
  });
});

describe("runDown, of any build", () => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const anyBuild = fc.record({
    gap: between(0, 2e-3),
    mass: between(0.05, 3),
    friction: between(0.1, 1.4),
    frictionTorque: between(0, 0.03),
    capacity: between(20, 400),
    minimumVoltage: between(1, 4.2),
    startCharge: between(0.01, 1),
    thermalResistance: fc.option(between(1, 60)),
    thermalTimeConstant: fc.option(between(4, 100)),
    auxCurrent: between(0, 3),
  });

  it("charge and voltage fall to the end, the target goes first, every fall lies within the run", () => {
    fc.assert(
      fc.property(anyBuild, (any) => {
        const { thermalResistance, capacity, minimumVoltage, startCharge, auxCurrent } = any;
        const thermalTimeConstant = thermalResistance === null ? null : any.thermalTimeConstant;
        const { motor, skirt, vehicle, supply } = PANE_CRAWLER;
        const answer = runDown({
          ...withCell({ capacity, minimumVoltage }),
          startCharge,
          motor: { ...motor, frictionTorque: any.frictionTorque, thermalResistance, thermalTimeConstant },
          skirt: { ...skirt, gap: any.gap },
          vehicle: { ...vehicle, mass: any.mass, wheelFriction: any.friction },
          supply: { ...supply, auxCurrent },
        });
        const { end, samples, attitudes } = answer;
        expectAllFinite(answer);
        for (let i = 1; i < samples.length; i++) {
          expect(samples[i].time).toBeGreaterThanOrEqual(samples[i - 1].time);
          expect(samples[i].charge).toBeLessThanOrEqual(samples[i - 1].charge);
        }
        for (const { holds, target } of attitudes) {
          expect(holds.time ?? 0).toBeLessThanOrEqual(end.time);
          if (target.state === "holds-to-the-end") expect(holds.state).toBe("holds-to-the-end");
          if (holds.state === "never-held") expect(target.state).toBe("never-held");
          if (holds.time !== null) expect(target.time ?? 0).toBeLessThanOrEqual(holds.time);
        }
      }),
      { numRuns: 60, seed: 4 },
    );
  });
});

describe("runDown, of a motor that cannot turn", () => {
  it("answers: nothing is held, a warning says why, the pack empties at V/R", () => {
    const motor = { ...PANE_CRAWLER.motor, frictionTorque: 1 };
    const { end, attitudes, samples, warnings } = runDown({
      ...withCell({ curve: FLAT, minimumVoltage: 1 }),
      motor,
    });
    const fromPack = 2 * 0.026 + 0.014;
    const standing = (7.4 - fromPack * 0.35) / (0.19 + 0.02 + fromPack);
    expect(end.time).toBeCloseToRelative(700 / (standing + 0.35), 1e-10);
    expect(attitudes.map(({ holds }) => holds.state)).toEqual(attitudes.map(() => "never-held"));
    expect(samples[0]).toMatchObject({ rpm: 0, pressure: 0, suction: 0 });
    expect(warnings.map(({ code }) => code)).toContain("motor-stalled");
  });

  it("of one that stops on the way: a warning says when", () => {
    const motor = { ...PANE_CRAWLER.motor, frictionTorque: (K * 6.6) / 0.276 };
    const { samples, warnings } = runDown({ ...withCell({ minimumVoltage: 0.1 }), motor });
    expect(samples[0].rpm).toBeGreaterThan(0);
    expect(samples.at(-1)?.rpm).toBe(0);
    expect(warnings.map(({ code }) => code)).toContain("point-lost");
  });
});

describe("runDown, of a propeller", () => {
  it("on a flat cell: ends empty at t = C·z/I, without a pressure", () => {
    const { skirt: _none, ...rest } = withCell({ curve: FLAT });
    const pack = {
      series: 2,
      parallel: 1,
      wireResistance: 0.014,
      cellResistance: 0.026,
      openCircuitVoltage: 3.7,
    };
    const { point } = predictPropeller({ ...PANE_CRAWLER, rotor: PANE_PROPELLER, pack });
    const { end, samples } = runDown({ ...rest, rotor: PANE_PROPELLER });
    expect(end.time).toBeCloseToRelative(700 / (point?.packCurrent ?? 0), 1e-10);
    expect(samples[0].pressure).toBeNull();
    expect(samples[0].suction).toBeCloseToRelative(point?.thrust ?? 0, 1e-10);
  });

  it("with a winding that warms: pulls less and less, though the voltage stays", () => {
    const motor = { ...PANE_CRAWLER.motor, thermalResistance: 10, thermalTimeConstant: 20 };
    const { samples } = runDown({ ...withCell({ curve: FLAT }), motor, rotor: PANE_PROPELLER });
    expect(samples[0].windingTemperature).toBe(293.15);
    for (let i = 1; i < samples.length; i++) {
      expect(samples[i].suction).toBeLessThan(samples[i - 1].suction * (1 + 1e-12));
      expect(samples[i].windingTemperature).toBeGreaterThanOrEqual(samples[i - 1].windingTemperature);
    }
  });
});

describe("runDown, with input that can't be", () => {
  it("of a cell below its minimum from the start: no run, said so", () => {
    const { end, samples, warnings } = runDown(withCell({ minimumVoltage: 4.15 }));
    expect(end).toEqual({ time: 0, reason: "minimum-voltage" });
    expect(samples).toHaveLength(1);
    expect(warnings.map(({ code }) => code)).toContain("below-minimum-at-start");
  });

  it("of more than 43 200 steps: refuses, with the capacity's path", () => {
    const motor = { ...PANE_CRAWLER.motor, frictionTorque: 1 };
    const endless = { ...withCell({ curve: FLAT, minimumVoltage: 1, capacity: 1e7 }), motor };
    expectOutOfRange(() => runDown(endless), "pack.cell.capacity");
  });

  it.each([
    ["startCharge", { startCharge: 0 }],
    ["startCharge", { startCharge: 1.1 }],
    ["step", { step: 2 }],
    ["step", { step: Number.NaN }],
    ["targetMargin", { targetMargin: 0 }],
    ["angles", { angles: [181] }],
    ["skirt", { skirt: null }],
    ["pack.cell.capacity", withCell({ capacity: 0 })],
    ["pack.cell.minimumVoltage", withCell({ minimumVoltage: -1 })],
    [
      "motor.thermalTimeConstant",
      { motor: { ...PANE_CRAWLER.motor, thermalResistance: 20, thermalTimeConstant: 0 } },
    ],
  ])("with a wrong %s: throws and names it", (quantity, change) => {
    expectOutOfRange(() => runDown({ ...crawler, ...change }), quantity);
  });

  it.each([
    ["motor.thermalResistance", { motor: { ...PANE_CRAWLER.motor, thermalTimeConstant: 30 } }],
    ["pack.cell.curve", withCell({ curve: LINE.slice(1) })],
    ["rotor.lambda", { rotor: { ...PANE_CRAWLER.rotor, lambda: [-5, 1] } }],
  ])("short of %s: says what is missing", (path, change) => {
    try {
      runDown({ ...crawler, ...change });
      expect.unreachable("it should refuse");
    } catch (error) {
      expect(error).toBeInstanceOf(NotEnoughDataError);
      expect(error).toMatchObject({ path });
    }
  });
});
