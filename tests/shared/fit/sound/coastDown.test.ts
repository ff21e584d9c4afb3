import { describe, expect, it } from "vitest";
import { fitCoastDown } from "#shared/fit/sound/coastDown.ts";
import { type Moment, steadySpeed, trackOf } from "#shared/fit/sound/track.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { rotorSound } from "#tests/support/rotorSound.ts";

const RPM = (2 * Math.PI) / 60;
/** Of the made-up rotor: M_c/J [rad/s²] and k/J [1/rad]. */
const FRICTION = 180;
const AIR = 1.6e-4;
const START = 20_000 * RPM;
const CUT = 0.5;

/** Closed form of dω/dt = −a − kω² from ω₀: ω = √(a/k) tan(atan(ω₀√(k/a)) − t√(ak)). */
function falling(time: number): number {
  if (time < CUT) return START;
  const root = Math.sqrt(FRICTION / AIR);
  return root * Math.tan(Math.max(0, Math.atan(START / root) - (time - CUT) * Math.sqrt(FRICTION * AIR)));
}

const at = (times: readonly number[], speed: (time: number) => number): Moment[] =>
  times.map((time) => ({ time, speed: speed(time), uncertainty: 1 }));
const times = (to: number, step: number) => Array.from({ length: Math.floor(to / step) }, (_, i) => i * step);

function heard(samples: Float32Array, rate: number): Moment[] {
  const track = trackOf(samples, rate, { blades: 9, from: 1500 * RPM, to: 40_000 * RPM });
  for (;;) {
    const step = track.next();
    if (step.done) return step.value;
  }
}

describe("fitCoastDown", () => {
  it("of exact moments of the closed form: gives friction and air back, to the rule of the trapezium", () => {
    const { friction, air, from, to } = fitCoastDown(at(times(3.5, 0.02), falling));
    expect(friction).toBeCloseToRelative(FRICTION, 2e-3);
    expect(air).toBeCloseToRelative(AIR, 2e-3);
    expect(from).toBeGreaterThanOrEqual(CUT - 0.02);
    expect(to).toBeGreaterThan(3);
  });

  it("of a rotor's sound that dies away: gives friction over inertia within its 95 % interval and within 10 %", () => {
    const rate = 48_000;
    const sound = { rate, seconds: 3.2, blades: 9, harmonics: [1, 0.6, 0.4, 0.3], noise: -10 };
    const samples = rotorSound({ ...sound, turns: (time) => falling(time) / (2 * Math.PI) });
    const found = fitCoastDown(heard(samples, rate));
    expect(found.friction).toBeCloseToRelative(FRICTION, 0.1);
    expect(found.air).toBeCloseToRelative(AIR, 0.1);
  });

  it("of a steady speed, a short fall, or nothing at all: says what to record", () => {
    const steady = at(times(2, 0.1), () => START);
    const short = at(times(1, 0.1), (time) => START * (1 - 0.1 * time));
    for (const moments of [steady, short, []])
      expect(() => fitCoastDown(moments)).toThrow(NotEnoughDataError);
  });
});

describe("steadySpeed", () => {
  it("is the median, uncertain by each moment's own and by the scatter", () => {
    const moments = at([0, 1, 2, 3, 4], (time) => 1000 + (time - 2));
    const found = steadySpeed(moments);
    expect(found?.speed).toBe(1000);
    // by hand: own 1, scatter √((4 + 1 + 0 + 1 + 4)/5) = √2
    expect(found?.uncertainty).toBeCloseTo(Math.sqrt(3), 12);
  });

  it("is none where nothing was heard, or no speed lasts", () => {
    expect(steadySpeed([])).toBeNull();
    expect(steadySpeed(at([0, 1, 2, 3], (time) => 1000 * 1.5 ** time))).toBeNull();
  });
});
