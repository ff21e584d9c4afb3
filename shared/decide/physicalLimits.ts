const LARGEST = Number.POSITIVE_INFINITY;
/** Least value of what must be above 0: the least that still divides. */
const LEAST = 1e-12;

/** Ranges that end on both sides: shares, and where the relations themselves end. */
const RANGES: Readonly<Record<string, readonly [number, number]>> = {
  "air.temperature": [253.15, 333.15],
  "air.pressure": [30e3, 120e3],
  "air.humidity": [0, 1],
  "supply.duty": [0, 1],
  "skirt.measuredLeak.exponent": [0.5, 1],
  "vehicle.skirtShare": [0, 1],
  "vehicle.jetAngle": [0, 180],
};

/** Numbers that may be negative: coefficients, and places along the vehicle. */
const ANY_SIGN =
  /^(rotor\.(psi\.[1-9]\d*|lambda\.\d+|thrust\.\d+|power\.\d+|sizeCorrection\.applied)|vehicle\.(cgFromRear|suctionFromRear))$/;

/** Numbers that may be 0. */
const MAY_BE_ZERO =
  /^(skirt\.(gap|roughness|land|lossSum|landFriction|joint\.(span|depth)|holes\.\d+\.thickness)|motor\.(frictionTorque|viscousTorque|thermalResistance)|pack\.(cellResistance|wireResistance)|supply\.(driverResistance|auxCurrent)|vehicle\.(wheelFriction|skirtFriction|rollingResistance|cgHeight|jolt|gapLoad)|rotor\.phiMin)$/;

/**
 * What a number of a prediction's input can be at all.
 *
 *     shares 0…1;  gap, resistances, frictions ≥ 0;  mass, sizes, voltages > 0;  coefficients and places any
 *
 * @param path - of the number, as in a request: "skirt.gap" [-]
 * @returns least and greatest value, infinite where there is none [unit of the number]
 *
 * Valid for the input of a prediction. Source: geometry; ranges of the relations (CIPM-2007, ISO 9972)
 */
export function limitsOf(path: string): readonly [number, number] {
  const range = RANGES[path];
  if (range) return range;
  if (ANY_SIGN.test(path)) return [-LARGEST, LARGEST];
  return [MAY_BE_ZERO.test(path) ? 0 : LEAST, LARGEST];
}
