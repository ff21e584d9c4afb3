import { OutOfRangeError, requirePositive } from "../../numeric/errors.ts";

/** Between these two the factor is stated [K]. */
const [FREEZING, ROOM] = [273.15, 293.15];

/**
 * How much more resistance a cell has in the cold than at room temperature.
 *
 *     R(T)/R(20 °C) = f^((20 °C − T)/20 K) below 20 °C, 1 above;  f = R(0 °C)/R(20 °C)
 *
 * @param factor - f, as stated of the cell [-], ≥ 1
 * @param temperature - T of the cell [K], > 0
 * @returns R(T)/R(20 °C) [-], ≥ 1
 * @throws {OutOfRangeError} on a factor below 1, a temperature that is not above 0
 *
 * Valid between −20 and 20 °C for a cell as cold as the air; a run warms it. Source: two stated points joined as an activated process has them, ln R on a line over so few kelvins; f is two to three, common practice, no source; docs/method/run-down.md
 */
export function coldRise(factor: number, temperature: number): number {
  if (!(factor >= 1 && Number.isFinite(factor)))
    throw new OutOfRangeError("pack.cell.coldFactor", factor, "1 or more");
  requirePositive("temperature", temperature);
  return temperature < ROOM ? factor ** ((ROOM - temperature) / (ROOM - FREEZING)) : 1;
}
