import { describe, expect, it } from "vitest";
import { keptDuty } from "#shared/physics/rundown/throttled.ts";
import { type RundownInput, runDown } from "#shared/physics/rundown.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { PANE_CRAWLER, PANE_PROPELLER } from "#tests/support/paneCrawler.ts";

const CELL = {
  capacity: 360,
  minimumVoltage: 3,
  resistance: 0.026,
  curve: [
    [0, 3],
    [0.05, 3.4],
    [0.3, 3.65],
    [0.7, 3.85],
    [1, 4.18],
  ],
} as const;

function crawler(change: Partial<RundownInput> = {}): RundownInput {
  return {
    ...PANE_CRAWLER,
    pack: { series: 2, parallel: 1, wireResistance: 0.014, cell: CELL },
    angles: [],
    ...change,
  };
}

/** The crawler makes it at full charge with throttle to spare, and no more near the end of the charge [Pa]. */
const KEPT = 1600;

describe("keptDuty", () => {
  it("of numbers whose root is whole: the smaller root, by hand", () => {
    // R_b·I = 2, V = 7: 2δ² − 7δ + 3 = 0 has the roots ½ and 3.
    const circuit = {
      packResistance: 1,
      supply: { duty: 1, driverResistance: 0.25, auxCurrent: 0 },
      torqueConstant: 0.01,
    };
    expect(keptDuty(circuit, 7, { current: 2, speed: 200, windingResistance: 0.25 })).toBeCloseToRelative(
      0.5,
      1e-14,
    );
    expect(keptDuty(circuit, 4, { current: 2, speed: 200, windingResistance: 0.25 })).toBeNull();
  });
});

describe("runDown with a kept suction", () => {
  it("where a fixed throttle makes that suction: needs that throttle, and draws as much", () => {
    const fixed = runDown(crawler({ supply: { ...PANE_CRAWLER.supply, duty: 0.8 } }));
    const there = fixed.samples[60];
    const kept = runDown(crawler({ startCharge: there.charge, keep: { pressure: there.pressure ?? 0 } }));
    expect(kept.keep?.dutyAtStart).toBeCloseToRelative(0.8, 1e-9);
    for (const key of ["rpm", "suction", "packCurrent", "packVoltage"] as const)
      expect(kept.samples[0][key]).toBeCloseToRelative(there[key], 1e-9);
  });

  const pack = { series: 2, parallel: 1, wireResistance: 0.014, cell: { ...CELL, capacity: 1440 } };
  const kept = runDown(crawler({ pack, keep: { pressure: KEPT } }));
  const from = kept.keep?.fullThrottleFrom ?? Number.NaN;

  it("until full throttle is too little: suction and speed stay, the throttle rises to 1; then the suction falls", () => {
    expect(from).toBeGreaterThan(0);
    expect(from).toBeLessThan(kept.end.time);
    const [keeps, falls] = [true, false].map((early) =>
      kept.samples.filter(({ time }) => time < from === early),
    );
    for (const { pressure, rpm } of keeps) {
      expect(pressure).toBeCloseToRelative(KEPT, 1e-12);
      expect(rpm).toBeCloseToRelative(kept.samples[0].rpm, 1e-12);
    }
    const duties = kept.samples.map(({ duty }) => duty ?? 0);
    expect(duties).toEqual([...duties].sort((a, b) => a - b));
    expect(duties.at(-1)).toBe(1);
    const pressures = falls.map(({ pressure }) => pressure ?? 0);
    expect(pressures).toEqual([...pressures].sort((a, b) => b - a));
    expect(pressures[0]).toBeLessThan(KEPT);
  });

  it("from then on: as a run at full throttle from that charge", () => {
    const last = kept.samples.filter(({ time }) => time < from).at(-1);
    const [next] = kept.samples.filter(({ time }) => time > from);
    const full = runDown(crawler({ startCharge: next.charge }));
    expect(full.samples[0].pressure).toBeCloseToRelative(next.pressure ?? 0, 1e-9);
    expect(last?.duty).toBeGreaterThan(0.99);
  });

  it("all through: the charge drawn is ∫I dt, to 1e-6", () => {
    const { samples } = kept;
    // Simpson over pairs of even steps; trapezoids where the throttle reaches its end, and over the last, shorter steps.
    let drawn = 0;
    for (let i = 0; i + 1 < samples.length; i += 2) {
      const [a, b, c = b] = samples.slice(i, i + 3);
      const [first, second] = [b.time - a.time, c.time - b.time];
      const isEven = Math.abs(first - second) < 1e-9 && !(a.time < from && c.time > from);
      drawn += isEven
        ? ((a.packCurrent + 4 * b.packCurrent + c.packCurrent) * first) / 3
        : (first * (a.packCurrent + b.packCurrent) + second * (b.packCurrent + c.packCurrent)) / 2;
    }
    expect(drawn / pack.cell.capacity).toBeCloseToRelative(1 - (samples.at(-1)?.charge ?? 0), 1e-6);
  });

  it("at every moment: what the pack gives is shaft, friction, copper, controller and other loads, to 1e-6", () => {
    const { motor, supply } = PANE_CRAWLER;
    const k = 60 / (2 * Math.PI * motor.kv);
    for (const { duty = 0, rpm, packCurrent, packVoltage } of kept.samples) {
      const speed = (rpm * 2 * Math.PI) / 60;
      const current = (packCurrent - supply.auxCurrent) / duty;
      const spent =
        k * current * speed +
        current ** 2 * (motor.resistance + supply.driverResistance) +
        packVoltage * supply.auxCurrent;
      expect(packVoltage * packCurrent).toBeCloseToRelative(spent, 1e-6);
    }
  });

  it("lasts longer than full throttle", () => {
    expect(kept.end.time).toBeGreaterThan(runDown(crawler({ pack })).end.time);
  });

  it("beyond what full throttle ever makes: full throttle from the start", () => {
    const hard = runDown(crawler({ keep: { pressure: 20_000 } }));
    const full = runDown(crawler());
    expect(hard.keep).toEqual({ dutyAtStart: 1, fullThrottleFrom: 0 });
    expect(hard.end.time).toBeCloseToRelative(full.end.time, 1e-12);
  });

  it("with a warm winding and a drive cycle: keeps it under every load, and loses it to the heaviest first", () => {
    const motor = { ...PANE_CRAWLER.motor, thermalResistance: 8, thermalTimeConstant: 40 };
    const cycle = [
      { angle: 90, share: 0.5, driveCurrent: 2 },
      { angle: 0, share: 0.5, driveCurrent: 0, moving: false },
    ];
    const run = runDown(crawler({ motor, cycle, keep: { pressure: KEPT } }));
    const [first] = run.samples;
    expect(first.pressure).toBeCloseToRelative(KEPT, 1e-12);
    const steady = runDown(crawler({ motor, keep: { pressure: KEPT } }));
    expect(run.keep?.fullThrottleFrom).toBeLessThan(steady.keep?.fullThrottleFrom ?? 0);
  });

  it("of a vehicle whose gap gives: margins at the kept throttle, below those of a rigid one where it opens", () => {
    const vehicle = { ...PANE_CRAWLER.vehicle, verticalStiffness: 8000 };
    const run = runDown(crawler({ vehicle, angles: [180], keep: { pressure: KEPT } }));
    const rigid = runDown(crawler({ angles: [180], keep: { pressure: KEPT } }));
    expect(run.samples[0].suction).toBeCloseToRelative(rigid.samples[0].suction, 1e-12);
    expect(run.keep?.dutyAtStart).toBeCloseToRelative(rigid.keep?.dutyAtStart ?? 0, 1e-12);
  });

  it.each([0, -5, Number.NaN])("of %s Pa: refused by name", (pressure) => {
    expectOutOfRange(() => runDown(crawler({ keep: { pressure } })), "keep.pressure");
  });

  it("of an open propeller: refused, it has no cavity", () => {
    const run = () => runDown(crawler({ rotor: PANE_PROPELLER, skirt: null, keep: { pressure: KEPT } }));
    expectOutOfRange(run, "keep.pressure");
  });
});

describe("runDown with a kept thrust", () => {
  const open = (change: Partial<RundownInput> = {}) =>
    crawler({ rotor: PANE_PROPELLER, skirt: null, ...change });

  it("where a fixed throttle makes that thrust: needs that throttle, and draws as much", () => {
    const fixed = runDown(open({ supply: { ...PANE_CRAWLER.supply, duty: 0.7 } }));
    const there = fixed.samples[60];
    const kept = runDown(open({ startCharge: there.charge, keep: { thrust: there.suction } }));
    expect(kept.keep?.dutyAtStart).toBeCloseToRelative(0.7, 1e-9);
    for (const key of ["rpm", "suction", "packCurrent", "packVoltage"] as const)
      expect(kept.samples[0][key]).toBeCloseToRelative(there[key], 1e-9);
  });

  it("holds it to the moment when full throttle is too little, and lasts longer than full throttle", () => {
    const full = runDown(open());
    const [{ suction: most }] = full.samples;
    const kept = runDown(open({ keep: { thrust: 0.8 * most } }));
    const from = kept.keep?.fullThrottleFrom ?? Number.POSITIVE_INFINITY;
    expect(kept.end.time).toBeGreaterThan(full.end.time);
    const before = kept.samples.filter(({ time }) => time < from);
    expect(before.length).toBeGreaterThan(10);
    for (const { suction, pressure } of before) {
      expect(suction).toBeCloseToRelative(0.8 * most, 1e-12);
      expect(pressure).toBeNull();
    }
  });

  it("beyond what full throttle ever makes: full throttle from the start", () => {
    const hard = runDown(open({ keep: { thrust: 1000 } }));
    expect(hard.keep).toEqual({ dutyAtStart: 1, fullThrottleFrom: 0 });
  });

  it.each([0, -5, Number.NaN])("of %s N: refused by name", (thrust) => {
    expectOutOfRange(() => runDown(open({ keep: { thrust } })), "keep.thrust");
  });

  it("of a rotor in a duct: refused, it keeps a suction", () => {
    expectOutOfRange(() => runDown(crawler({ keep: { thrust: 2 } })), "keep.thrust");
  });
});
