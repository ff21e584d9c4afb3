import type { RotorReadingPoint } from "#shared/fit/rotorPoints.ts";

export interface ReadingWish {
  readonly phi: number;
  readonly psi: number;
  readonly lambda?: number;
  readonly rpm?: number;
  readonly density?: number;
  readonly diameter?: number;
}

/** The reading that a rotor with these coefficients would give; written out anew, from the definitions, so that it checks the fan laws. */
export function readingAt(wish: ReadingWish): RotorReadingPoint {
  const { phi, psi, lambda, rpm = 18_000, density = 1.2, diameter = 0.05 } = wish;
  const u = (Math.PI * diameter * rpm) / 60;
  const disc = (Math.PI * diameter * diameter) / 4;
  return {
    rpm,
    flow: phi * disc * u,
    pressure: (psi * density * u * u) / 2,
    density,
    diameter,
    shaftPower: lambda === undefined ? undefined : (lambda * density * disc * u ** 3) / 2,
  };
}
