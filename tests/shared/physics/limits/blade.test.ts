import { describe, expect, it } from "vitest";
import { burstSpeedOf, rotorFigures } from "#shared/decide/limits/rotor.ts";
import { bladeBending } from "#shared/physics/limits/blade.ts";
import { burstSpeed } from "#shared/physics/limits/disc.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const BLADE = { height: 0.006, thickness: 0.0008, radius: 0.016, angle: 40, density: 1240 };
const AIR = { temperature: 293.15, pressure: 101_325, humidity: 0.5 };

describe("bending at a blade's root", () => {
  // By hand, a 10 mm long blade: mass, its centrifugal force, the part across it, M = F·L/2, W = c·t²/6.
  it("is that of a cantilever under its own centrifugal force", () => {
    const [chord, speed] = [0.01, 3000];
    const mass = 1240 * chord * 0.0008 * 0.006;
    const across = mass * speed ** 2 * 0.016 * Math.cos((40 * Math.PI) / 180);
    const moment = (across * 0.006) / 2;
    expect(bladeBending(BLADE, speed)).toBeCloseToRelative(moment / ((chord * 0.0008 ** 2) / 6), 1e-12);
  });

  it("is none of a radial blade, and grows with the square of the speed", () => {
    expect(bladeBending({ ...BLADE, angle: 90 }, 3000)).toBe(0);
    expect(bladeBending(BLADE, 6000)).toBeCloseToRelative(4 * bladeBending(BLADE, 3000), 1e-14);
  });

  it.each([
    ["rotor.bladeHeight", { height: 0 }],
    ["rotor.bladeThickness", { thickness: Number.NaN }],
    ["rotor.bladeAngle", { angle: 91 }],
  ])("refuses what can't be: %s", (path, change) => {
    expectOutOfRange(() => bladeBending({ ...BLADE, ...change }, 3000), path);
  });
});

describe("a rotor with free-standing blades", () => {
  const body = { density: 1240, poisson: 0.36, strength: 25e6, boreDiameter: 0.0015, blades: null };
  const { density: _same, ...standing } = BLADE;
  const build = {
    air: AIR,
    rotor: { diameter: 0.042, psi: [1], lambda: [0.02], phiMin: 0, phiMax: 0.3, sizeCorrection: null },
  };

  it("bursts where the first of disc and blade reaches the strength", () => {
    const burst = burstSpeedOf({ ...body, standing }, 0.042);
    expect(bladeBending(BLADE, burst)).toBeCloseToRelative(25e6, 1e-12);
    expect(burst).toBeLessThan(burstSpeedOf(body, 0.042));
    const { factor, bending, stress } = rotorFigures({ build, rotor: { ...body, standing } }, burst / 2);
    expect(factor).toBeCloseToRelative(2, 1e-12);
    expect(bending).toBe(stress);
  });

  it("of stiff blades, or of none that is known, is today's disc", () => {
    const disc = { outerRadius: 0.021, boreRadius: 0.00075, density: 1240, poisson: 0.36 };
    const stiff = { ...standing, height: 1e-4 };
    expect(burstSpeedOf({ ...body, standing: stiff }, 0.042)).toBe(burstSpeed(disc, null, 25e6));
    expect(burstSpeedOf(body, 0.042)).toBe(burstSpeed(disc, null, 25e6));
    expect(rotorFigures({ build, rotor: body }, 3000).bending).toBeNull();
  });
});
