import { OutOfRangeError, requireFinite, requirePositive } from "../numeric/errors.ts";
import { DRY_AIR_GAS_CONSTANT, STANDARD_GRAVITY, STANDARD_PRESSURE } from "./constants.ts";

/** Standard atmosphere at sea level, and how it cools with height. Defined; ISO 2533:1975. */
const SEA_LEVEL_TEMPERATURE = 288.15;
const LAPSE_RATE = 6.5e-3;
/** n = R·L/g₀ [-] */
const EXPONENT = (DRY_AIR_GAS_CONSTANT * LAPSE_RATE) / STANDARD_GRAVITY;
/** Heights that the relation is asked for: below the Dead Sea's shore, and where nobody tests [m]. Judgement. */
const [LOWEST, HIGHEST] = [-500, 6000];

/**
 * Pressure at a place, from the pressure reduced to sea level that weather reports and airfields give.
 *
 *     p = (p_sea^n − p₀^n·L·h/T₀)^(1/n),  n = R·L/g₀
 *
 * @param seaLevel - pressure reduced to sea level [Pa]
 * @param altitude - of the place above sea level, h [m]
 * @returns the pressure that a barometer shows there [Pa]
 * @throws {OutOfRangeError} on a pressure that is not above 0, an altitude that is not from −500 to 6000 m
 *
 * Valid for a reduction by the standard atmosphere, as for airfields (QNH). A weather service that reduces by the day's own temperature differs by
 * up to about 1 % at 1000 m in frost or heat. Source: ISO 2533:1975; Smithsonian Meteorological Tables, 6th ed., p. 269
 */
export function stationPressure(seaLevel: number, altitude: number): number {
  requirePositive("seaLevel", seaLevel);
  requireFinite("altitude", altitude);
  if (altitude < LOWEST || altitude > HIGHEST)
    throw new OutOfRangeError("altitude", altitude, `${LOWEST} to ${HIGHEST} m`);
  const fall = (STANDARD_PRESSURE ** EXPONENT * LAPSE_RATE * altitude) / SEA_LEVEL_TEMPERATURE;
  return (seaLevel ** EXPONENT - fall) ** (1 / EXPONENT);
}
