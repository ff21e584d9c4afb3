import type { Motor } from "../../model/parts/motor.ts";
import type { MotorTest } from "../../model/tests/motor.ts";
import { RPM } from "../../physics/motor.ts";
import { type TypedQuantity, toSI } from "../../units/quantity.ts";
import { type Book, findById } from "../book.ts";
import { inUse, type MotorReading, motorRows, type Reading } from "../readings.ts";
import { beside, OFF, type Slip, slipOf, UNIT } from "./slip.ts";

/** Voltages closer than this are the same one [-]. */
const SAME_VOLTAGE = 0.02;

/** @returns a current as a slip beyond what the blocked motor would take at its voltage, V/R by its maker's resistance */
export function stallCurrent(
  path: string,
  typed: TypedQuantity,
  voltage: TypedQuantity | undefined,
  motor: Motor | null,
): Slip[] {
  if (!motor || !voltage) return [];
  const high = toSI(voltage, "voltage") / motor.resistance;
  const said = `the blocked motor would take ${beside(high, "current", typed)}. ${UNIT}`;
  return slipOf({ path, value: toSI(typed, "current"), low: null, high, slack: OFF, said });
}

function slipsOfRow(row: MotorTest["rows"][number], index: number, motor: Motor): Slip[] {
  const at = (key: string) => `rows.${index}.${key}`;
  const speed = motor.kv * toSI(row.voltage, "voltage") * RPM;
  const free = motor.noLoadCurrent;
  return [
    ...slipOf({
      path: at("speed"),
      value: toSI(row.speed, "speed"),
      low: row.noLoad ? speed : null,
      high: speed,
      slack: OFF,
      said: `up to ${beside(speed, "speed", row.speed)} by its K_v. ${UNIT}`,
    }),
    ...(row.noLoad
      ? slipOf({
          path: at("current"),
          value: toSI(row.current, "current"),
          low: free,
          high: free,
          slack: OFF,
          said: `its maker states ${beside(free, "current", row.current)} without load. ${UNIT}`,
        })
      : stallCurrent(at("current"), row.current, row.voltage, motor)),
  ];
}

/** A load takes more current than no load at the same voltage and throttle. */
function belowNoLoad(test: MotorTest, rows: readonly Reading<MotorReading>[]): Slip[] {
  const free = rows.filter(({ noLoad }) => noLoad);
  return rows.flatMap(({ noLoad, voltage, current, throttle, row }) => {
    const same = free.find(
      (each) => each.throttle === throttle && Math.abs(each.voltage - voltage) <= SAME_VOLTAGE * voltage,
    );
    if (noLoad || !same || current >= same.current) return [];
    const said = beside(same.current, "current", test.rows[row].current);
    return [
      { path: `rows.${row}.current`, why: `${said} was read without load at the same voltage. Is it right?` },
    ];
  });
}

/** @returns readings of a motor test that may be slips, beside the maker's constants and one another */
export function slipsOfMotor(book: Book, test: MotorTest): Slip[] {
  const rows = inUse(motorRows(test));
  const motor = findById(book.motors, test.motor)?.data;
  if (!motor) return belowNoLoad(test, rows);
  const resistance = test.resistance
    ? slipOf({
        path: "resistance",
        value: toSI(test.resistance, "resistance"),
        low: motor.resistance,
        high: motor.resistance,
        slack: OFF,
        said: `its maker states ${beside(motor.resistance, "resistance", test.resistance)}. ${UNIT}`,
      })
    : [];
  const each = rows.flatMap(({ row }) => slipsOfRow(test.rows[row], row, motor));
  return [...resistance, ...each, ...belowNoLoad(test, rows)];
}
