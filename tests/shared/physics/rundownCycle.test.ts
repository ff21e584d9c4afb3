import { describe, expect, it } from "vitest";
import { type CycleSegment, type RundownInput, runDown } from "#shared/physics/rundown.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

type Curve = [number, number][];
const LINE: Curve = [
  [0, 3.2],
  [1, 4.2],
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
const crawler: RundownInput = {
  ...PANE_CRAWLER,
  pack: { series: 2, parallel: 1, wireResistance: 0.014, cell: CELL },
};
const heavy: RundownInput = {
  ...crawler,
  vehicle: { ...PANE_CRAWLER.vehicle, mass: 0.9 },
  motor: { ...PANE_CRAWLER.motor, thermalResistance: 18, thermalTimeConstant: 35 },
};
/** Invented: wall, ceiling, parked on the floor. */
const CYCLE: CycleSegment[] = [
  { angle: 90, share: 0.5, driveCurrent: 1.2 },
  { angle: 180, share: 0.3, driveCurrent: 0.7 },
  { angle: 0, share: 0.2, driveCurrent: 0, moving: false },
];
/** Σ share·current of it [A]. */
const MEAN_DRIVE = 0.5 * 1.2 + 0.3 * 0.7;

/** k_t = 60/(2π·K_v). */
const K = 60 / (2 * Math.PI * PANE_CRAWLER.motor.kv);

/** Sealed, and a rotor that takes no power: what is left is the motor's own friction. */
const frictionOnly: RundownInput = {
  ...crawler,
  rotor: { ...PANE_CRAWLER.rotor, lambda: [0] },
  skirt: { ...PANE_CRAWLER.skirt, gap: 0 },
  motor: { ...PANE_CRAWLER.motor, viscousTorque: 0 },
  pack: { ...crawler.pack, cell: { ...CELL, curve: LINE, minimumVoltage: 0.5 } },
};

describe("runDown, through a drive cycle", () => {
  it("of friction alone: ends empty at t = C·z/(M_c/k + I_aux + Σ share·I), exactly", () => {
    const { end } = runDown({ ...frictionOnly, cycle: CYCLE, startCharge: 0.7 });
    const drawn = PANE_CRAWLER.motor.frictionTorque / K + PANE_CRAWLER.supply.auxCurrent + MEAN_DRIVE;
    expect(end.reason).toBe("empty");
    expect(end.time).toBeCloseToRelative((700 * 0.7) / drawn, 1e-10);
  });

  it("of one load alone: is the run with that load beside the others, to the last digits", () => {
    const cycle = [90, 180].map((angle) => ({ angle, share: 0.5, driveCurrent: 0.8 }));
    const angles = [90, 180];
    const cycled = runDown({ ...heavy, angles, cycle });
    const steady = runDown({ ...heavy, angles, supply: { ...heavy.supply, auxCurrent: 0.35 + 0.8 } });
    expect(cycled.end.time).toBeCloseToRelative(steady.end.time, 1e-12);
    cycled.attitudes.forEach(({ holds }, i) => {
      expect(holds.state).toBe(steady.attitudes[i].holds.state);
      expect(holds.packVoltage ?? 1).toBeCloseToRelative(steady.attitudes[i].holds.packVoltage ?? 1, 1e-10);
    });
  });

  it("draws the charge that its mean current adds up to, within 1e-6", () => {
    const { samples } = runDown({ ...crawler, cycle: CYCLE, startCharge: 0.4, step: 0.5 });
    expect(samples[1].time).toBe(0.5);
    let drawn = 0;
    let i = 0;
    for (; i + 2 < samples.length - 1; i += 2) {
      const [from, middle, to] = samples.slice(i, i + 3).map(({ packCurrent }) => packCurrent);
      drawn += (from + 4 * middle + to) / 6;
    }
    for (; i + 1 < samples.length; i += 1)
      drawn +=
        ((samples[i].packCurrent + samples[i + 1].packCurrent) / 2) * (samples[i + 1].time - samples[i].time);
    expect(drawn).toBeCloseToRelative(700 * (0.4 - (samples.at(-1)?.charge ?? 0)), 1e-6);
  });

  // Without resistance in the pack V_b = V_oc under every load: ∫V_b·I dt = N_s·C·∫V_oc dz = N_s·C·(3.2 z + z²/2), whatever the power.
  it("of a pack without resistance: gives the energy under its curve, whatever the loads", () => {
    const cell = { ...CELL, resistance: 0, curve: LINE, minimumVoltage: 0.5 };
    const pack = { ...crawler.pack, wireResistance: 0, cell };
    const { samples, end } = runDown({ ...crawler, pack, cycle: CYCLE, startCharge: 0.4, step: 0.25 });
    const power = samples.map(({ packVoltage, packCurrent }) => packVoltage * packCurrent);
    const energy = power
      .slice(1)
      .reduce((sum, p, i) => sum + ((p + power[i]) / 2) * (samples[i + 1].time - samples[i].time), 0);
    expect(end.reason).toBe("empty");
    expect(energy).toBeCloseToRelative(2 * 700 * (3.2 * 0.4 + 0.4 ** 2 / 2), 1e-6);
  });

  it("half the step changes every time by less than 1e-4", () => {
    const [whole, half] = [1, 0.5].map((step) => runDown({ ...heavy, cycle: CYCLE, step }));
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
});

describe("what a drive cycle judges an attitude by", () => {
  const judgedAt = (angle: number, cycle: CycleSegment[]) =>
    runDown({ ...heavy, angles: [angle], cycle }).attitudes[0].judged;

  it("is the segment that goes there, the heaviest where none does, the parked margin where it only parks", () => {
    expect(judgedAt(180, CYCLE)).toEqual({ driveCurrent: 0.7, parked: false });
    expect(judgedAt(120, CYCLE)).toEqual({ driveCurrent: 1.2, parked: false });
    expect(judgedAt(0, CYCLE)).toEqual({ driveCurrent: 0, parked: true });
  });

  it("under the wall's own current: the wall is lost at the charge of a steady run with that current", () => {
    const angles = [90];
    const cold = { ...heavy, motor: PANE_CRAWLER.motor, angles };
    const cycled = runDown({ ...cold, cycle: CYCLE });
    const steady = runDown({ ...cold, supply: { ...heavy.supply, auxCurrent: 0.35 + 1.2 } });
    // The winding is cold: charge alone decides, and with it the voltage; the cycle takes longer to come to it.
    const [mine, theirs] = [cycled, steady].map(({ attitudes }) => attitudes[0].holds);
    expect(mine.state).toBe("falls");
    expect(mine.packVoltage).toBeCloseToRelative(theirs.packVoltage ?? 0, 1e-9);
    expect(mine.time ?? 0).toBeGreaterThan(theirs.time ?? 0);
  });

  it("parks longer on a slope than it climbs it", () => {
    const parked: CycleSegment[] = [
      { angle: 120, share: 0.5, driveCurrent: 0, moving: false },
      { angle: 0, share: 0.5, driveCurrent: 0 },
    ];
    const drives = parked.map((segment) => ({ ...segment, moving: true }));
    const timeOf = (cycle: CycleSegment[]) =>
      runDown({ ...heavy, angles: [120], cycle }).attitudes[0].holds.time ?? Number.POSITIVE_INFINITY;
    expect(timeOf(parked)).toBeGreaterThan(timeOf(drives));
  });

  it("ends the run where the heaviest load takes the cell to its minimum, and keeps each load beside the mean", () => {
    const answer = runDown({ ...heavy, cycle: CYCLE });
    const last = answer.samples.at(-1);
    expect(answer.end.reason).toBe("minimum-voltage");
    expect(last?.loads?.map(({ driveCurrent }) => driveCurrent)).toEqual([0, 0.7, 1.2]);
    expect(last?.loads?.[2].cellVoltage).toBeCloseToRelative(3, 1e-9);
    expect(last?.cellVoltage).toBeGreaterThan(3);
    expectAllFinite(answer);
  });

  it("says at which cell voltage an attitude goes, loaded by its own current", () => {
    const { attitudes } = runDown({ ...heavy, angles: [90], cycle: CYCLE });
    const { packVoltage, cellVoltage } = attitudes[0].holds;
    // The pack's voltage is two cells' less the wire's loss; 0.014 Ω at 3 to 12 A.
    expect(2 * (cellVoltage ?? 0) - (packVoltage ?? 0)).toBeGreaterThan(3 * 0.014);
    expect(2 * (cellVoltage ?? 0) - (packVoltage ?? 0)).toBeLessThan(12 * 0.014);
  });
});

describe("a drive cycle that can't be", () => {
  const wall = { angle: 90, share: 1, driveCurrent: 1 };
  it.each([
    ["cycle", [{ ...wall, share: 0.9 }]],
    ["cycle", [wall, { ...wall, share: 0.1 }]],
    ["cycle.0.share", [{ ...wall, share: 0 }]],
    ["cycle.0.share", [{ ...wall, share: Number.NaN }]],
    ["cycle.0.angle", [{ ...wall, angle: 181 }]],
    ["cycle.0.driveCurrent", [{ ...wall, driveCurrent: -1 }]],
    ["cycle.0.driveCurrent", [{ ...wall, moving: false }]],
  ])("with a wrong %s: throws and names it", (quantity, cycle) => {
    expectOutOfRange(() => runDown({ ...crawler, cycle }), quantity);
  });

  it("takes thirds typed as 0.333, and none at all as a steady load", () => {
    const third = { ...wall, share: 0.333 };
    expect(runDown({ ...crawler, cycle: [third, third, third] }).end.time).toBeGreaterThan(0);
    expect(runDown({ ...crawler, cycle: [] })).toEqual(runDown(crawler));
  });
});
