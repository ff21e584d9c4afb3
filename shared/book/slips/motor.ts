import type { Motor } from "../../model/parts/motor.ts";
import type { MotorTest } from "../../model/tests/motor.ts";
import { RPM } from "../../physics/motor.ts";
import type { DimensionName } from "../../units/dimensions.ts";
import { type TypedQuantity, toSI } from "../../units/quantity.ts";
import { type Book, findById } from "../book.ts";
import { type MotorReading, motorRows } from "../readings/motor.ts";
import { inUse, type Reading } from "../readings/reading.ts";
import { beside, OFF, type Slip, slipOf, UNIT } from "./slip.ts";

type Row = MotorTest["rows"][number];

/** Voltages closer than this are the same one [-]. */
const SAME_VOLTAGE = 0.02;

/** @returns a current as a slip beyond what the blocked motor would take at its voltage, V/R by its maker's resistance */
export function stallCurrent(
  path: string,
  typed: TypedQuantity,
  voltage: TypedQuantity | undefined,
  motor: Motor | null,
): Slip[] {
  if (motor?.resistance === undefined || !voltage) return [];
  const high = toSI(voltage, "voltage") / motor.resistance;
  const said = `the blocked motor would take ${beside(high, "current", typed)}. ${UNIT}`;
  return slipOf({ path, value: toSI(typed, "current"), low: null, high, slack: OFF, said });
}

/** A value beside the one that the maker states; nothing where none is stated. */
function besideStated(
  path: string,
  typed: TypedQuantity,
  name: DimensionName,
  stated: number | undefined,
  when = "",
): Slip[] {
  if (stated === undefined) return [];
  const said = `its maker states ${beside(stated, name, typed)}${when}. ${UNIT}`;
  return slipOf({ path, value: toSI(typed, name), low: stated, high: stated, slack: OFF, said });
}

function slipOfSpeed(path: string, { voltage, speed, noLoad }: Row, { kv }: Motor): Slip[] {
  if (kv === undefined) return [];
  const free = kv * toSI(voltage, "voltage") * RPM;
  const said = `up to ${beside(free, "speed", speed)} by its K_v. ${UNIT}`;
  const low = noLoad ? free : null;
  return slipOf({ path, value: toSI(speed, "speed"), low, high: free, slack: OFF, said });
}

function slipsOfRow(row: Row, index: number, motor: Motor): Slip[] {
  const at = (key: string) => `rows.${index}.${key}`;
  const current = row.noLoad
    ? besideStated(at("current"), row.current, "current", motor.noLoadCurrent, " without load")
    : stallCurrent(at("current"), row.current, row.voltage, motor);
  return [...slipOfSpeed(at("speed"), row, motor), ...current];
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
    ? besideStated("resistance", test.resistance, "resistance", motor.resistance)
    : [];
  const each = rows.flatMap(({ row }) => slipsOfRow(test.rows[row], row, motor));
  return [...resistance, ...each, ...belowNoLoad(test, rows)];
}
