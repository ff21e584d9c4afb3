import type { Rotor } from "../model/parts/rotor.ts";

export type RotorSize = Rotor["sizes"][number];

/** @returns the listed size nearest in proportion to a diameter [m] */
export function nearestSize(rotor: Pick<Rotor, "sizes">, diameter: number): RotorSize {
  const off = (size: RotorSize) => Math.abs(Math.log(size.diameter / diameter));
  return rotor.sizes.reduce((best, size) => (off(size) < off(best) ? size : best));
}

/** @returns mass of the nearest size, carried to the diameter with its cube [kg]; null where it isn't weighed */
export function rotorMass(rotor: Pick<Rotor, "sizes">, diameter: number): number | null {
  const { mass, diameter: of } = nearestSize(rotor, diameter);
  return mass === undefined ? null : mass * (diameter / of) ** 3;
}

/** @returns height of the nearest size, carried to the diameter in proportion [m]; null where it isn't measured */
export function rotorHeight(rotor: Pick<Rotor, "sizes">, diameter: number): number | null {
  const { height, diameter: of } = nearestSize(rotor, diameter);
  return height === undefined ? null : height * (diameter / of);
}
