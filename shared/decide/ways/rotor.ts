import type { Handle, Setting } from "./handle.ts";

/** Of the present diameter. Beyond, the fan laws carry no one's curve. Our choice. */
const [SMALLEST, LARGEST] = [0.5, 2];

/**
 * The rotor's diameter, by the fan laws.
 *
 *     D from half to twice the present;  ψ and λ kept, size correction where the build has it; a propeller's chord ∝ D
 *
 * @param setting - the build [SI], and its rotor at other diameters where known
 * @returns the handle [m]
 *
 * Valid for rotors of one shape. Source: fan laws; of the limits, our choice
 */
export function rotorHandles({ build, rotorAt }: Setting): Handle[] {
  const { rotor } = build;
  const now = rotor.diameter;
  const resized = (diameter: number) => {
    if (diameter === now) return rotor;
    if ("thrust" in rotor) return { ...rotor, diameter, chord: (rotor.chord * diameter) / now };
    return rotorAt?.(diameter) ?? { ...rotor, diameter };
  };
  return [
    {
      key: "diameter",
      now,
      limits: [SMALLEST * now, LARGEST * now],
      whole: false,
      put: (diameter) => ({ ...build, rotor: resized(diameter) }) as typeof build,
    },
  ];
}
