import { describe, expect, it } from "vitest";
import { findBladePass } from "#shared/fit/sound/bladePass.ts";
import { spectrumOf } from "#shared/fit/sound/spectrum.ts";
import { NotEnoughDataError, OutOfRangeError } from "#shared/numeric/errors.ts";
import { normals } from "#tests/support/normals.ts";
import { type RotorSound, rotorSound } from "#tests/support/rotorSound.ts";

const RPM = (2 * Math.PI) / 60;
/** What a phone records at. */
const RATE = 48_000;
const SECONDS = 0.7;
const range = { from: 1500 * RPM, to: 60_000 * RPM };
const even = (rpm: number) => () => rpm / 60;

function hear(sound: Partial<RotorSound> & { readonly turns: RotorSound["turns"]; readonly blades: number }) {
  const samples = rotorSound({ rate: RATE, seconds: SECONDS, harmonics: [1, 0.6, 0.4, 0.25], ...sound });
  return findBladePass(spectrumOf(samples, RATE), { blades: sound.blades, ...range });
}

/** The rotor's own frequency, as it was put in. */
const expected = (rpm: number, blades: number) => (rpm / 60) * blades;

const CASES = [
  [9, 24_000],
  [9, 11_237],
  [7, 38_411],
  [5, 3_001],
  [2, 17_345],
  [12, 6_666],
] as const;

describe("findBladePass, synthetic rotors", () => {
  it.each(CASES)("with %s blades at %s rpm, alone: to 0.2 %%", (blades, rpm) => {
    const found = hear({ blades, turns: even(rpm) });
    expect(found?.frequency).toBeCloseToRelative(expected(rpm, blades), 2e-3);
    expect(Math.abs((found?.frequency ?? 0) - expected(rpm, blades))).toBeLessThan(
      3 * (found?.uncertainty ?? 0),
    );
    expect(found?.other).toBeNull();
  });

  it.each(CASES)("with %s blades at %s rpm, noise of −6 dB over it: to 0.2 %%", (blades, rpm) => {
    expect(hear({ blades, turns: even(rpm), noise: -6 })?.frequency).toBeCloseToRelative(
      expected(rpm, blades),
      2e-3,
    );
  });

  it.each(CASES)("with %s blades at %s rpm, noise as loud as it and more: to 0.2 %%", (blades, rpm) => {
    expect(hear({ blades, turns: even(rpm), noise: 6 })?.frequency).toBeCloseToRelative(
      expected(rpm, blades),
      2e-3,
    );
  });

  it.each(CASES)(
    "with %s blades at %s rpm, a first harmonic weaker than the second: to 0.2 %%",
    (blades, rpm) => {
      const found = hear({ blades, turns: even(rpm), harmonics: [0.3, 1, 0.5, 0.4], noise: -6 });
      expect(found?.frequency).toBeCloseToRelative(expected(rpm, blades), 2e-3);
    },
  );

  it.each(CASES)(
    "with %s blades at %s rpm, falling by 2 %% a second: to 0.2 %% of its mean",
    (blades, rpm) => {
      const turns = (time: number) => (rpm / 60) * (1 - 0.02 * (time - SECONDS / 2));
      expect(hear({ blades, turns, noise: -6 })?.frequency).toBeCloseToRelative(expected(rpm, blades), 2e-3);
    },
  );

  it.each(CASES)("with %s blades at %s rpm, and a motor's whine twice as loud: to 0.2 %%", (blades, rpm) => {
    const found = hear({ blades, turns: even(rpm), noise: -6, whine: { order: 6.83 * 1.37, amplitude: 2 } });
    expect(found?.frequency).toBeCloseToRelative(expected(rpm, blades), 2e-3);
  });

  it("through noise drawn anew: is off by less than twice its uncertainty in 95 % of draws", () => {
    const misses = Array.from({ length: 40 }, (_, i) => {
      const found = hear({ blades: 9, turns: even(9000 + 137 * i), noise: 0, seed: i + 1 });
      return Math.abs((found?.frequency ?? 0) - expected(9000 + 137 * i, 9)) > 2 * (found?.uncertainty ?? 0);
    }).filter(Boolean);
    expect(misses.length).toBeLessThanOrEqual(2);
  });
});

describe("findBladePass, what it says beside the frequency", () => {
  it("hears the shaft's own rate agree with the blade count", () => {
    expect(hear({ blades: 9, turns: even(24_000), shaft: [0.3, 0.2, 0.1] })?.shaft).toEqual({
      says: "agrees",
    });
  });

  it("says which blade count the shaft's rate speaks for where another was given", () => {
    const samples = rotorSound({
      rate: RATE,
      seconds: SECONDS,
      blades: 7,
      turns: even(12_000),
      harmonics: [1, 0.6, 0.4],
      shaft: [0.3, 0.2, 0.1],
    });
    const found = findBladePass(spectrumOf(samples, RATE), { blades: 9, ...range });
    expect(found?.shaft).toEqual({ says: "other", blades: 7 });
  });

  it("says nothing of the blade count where the shaft isn't heard", () => {
    expect(hear({ blades: 9, turns: even(24_000), noise: -20 })?.shaft).toEqual({ says: "nothing" });
  });

  it("names the other of two rotors that run at once", () => {
    const both = [even(14_000), even(16_900)].map((turns) =>
      rotorSound({ rate: RATE, seconds: SECONDS, blades: 9, turns, harmonics: [1, 0.6, 0.4] }),
    );
    const samples = both[0].map((each, i) => each + both[1][i]);
    const found = findBladePass(spectrumOf(samples, RATE), { blades: 9, ...range });
    const heard = [found?.frequency ?? 0, found?.other ?? 0].sort((a, b) => a - b);
    expect(heard[0]).toBeCloseToRelative(2100, 2e-3);
    expect(heard[1]).toBeCloseToRelative(2535, 2e-3);
  });

  it.each([
    ["silence", () => 0],
    ["noise alone", normals(7)],
  ])("of %s hears no rotor", (_what, sample) => {
    const samples = Float32Array.from({ length: RATE * SECONDS }, sample);
    expect(findBladePass(spectrumOf(samples, RATE), { blades: 9, ...range })).toBeNull();
  });

  it("refuses half a blade, speeds that are no range, and a sound too short", () => {
    const spectrum = spectrumOf(new Float32Array(8192), RATE);
    expect(() => findBladePass(spectrum, { blades: 2.5, ...range })).toThrow(OutOfRangeError);
    expect(() => findBladePass(spectrum, { blades: 9, from: 100, to: 100 })).toThrow(OutOfRangeError);
    expect(() => findBladePass(spectrum, { blades: 9, from: 0, to: 100 })).toThrow(OutOfRangeError);
    expect(() => spectrumOf(new Float32Array(4000), RATE)).toThrow(NotEnoughDataError);
    expect(() => spectrumOf(new Float32Array(8192), 0)).toThrow(OutOfRangeError);
  });
});
