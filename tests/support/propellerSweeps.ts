// Source: open motor and propeller test data by StrawsonDesign, MIT (tests/fixtures/motor-prop-two-voltages/SOURCE.md).
import { csvFixture } from "./csvFixture.ts";
import { thrustBook, typed } from "./thrustBook.ts";

/** Five-inch propellers [m]. */
export const DIAMETER = 5 * 0.0254;
export const GRAM_FORCE = 9.80665e-3;
/** One row of the sweeps; the 11.1 V pack's last rows, sagged below 10.4 V, are left out. */
export type SweepRow = (typeof rows)[number];
export const rows = csvFixture("motor-prop-two-voltages/rows.csv").filter(
  (row) => Number(row.rpm) > 0 && !(row.V_nominal === "11.1" && Number(row.V) < 10.4),
);
export const propellers = [...new Set(rows.map((row) => row.prop_code))];
export const motors = [...new Set(rows.map((row) => row.motor_code))];

/** 1000 to 2000 µs, as a share [%]. */
const throttleOf = (row: SweepRow): number => (Number(row.esc_us) - 1000) / 10;
export const isFull = (row: SweepRow): boolean => throttleOf(row) === 100;

/** All thrusts of motor m with propellers 7 and 8 stand below 0 in the data: the scale was turned. */
export const isTurned = (motor: string, propeller: string): boolean =>
  motor === "m" && ["7", "8"].includes(propeller);

/** Full throttle at 7.4 V gives the motor; its sweeps at both voltages are thrust tests. */
export function bookOf(motor: string, propeller: string) {
  const own = rows.filter((row) => row.motor_code === motor);
  const motorTest = {
    kind: "motor",
    date: "2026-05-01",
    motor: "stand-motor",
    rows: own
      .filter((row) => isFull(row) && row.V_nominal === "7.4")
      .map((row) => ({
        voltage: typed(Number(row.V), "V"),
        current: typed(Number(row.I_A), "A"),
        speed: typed(Number(row.rpm), "rpm"),
      })),
  };
  const sweep = own.filter((row) => row.prop_code === propeller);
  const thrustTest = {
    kind: "thrust",
    date: "2026-05-02",
    rotor: "prop",
    diameter: typed(5, "in"),
    motor: "stand-motor",
    rows: sweep.map((row) => ({
      speed: typed(Number(row.rpm), "rpm"),
      thrust: typed(Number(row.thrust_gf), "gf"),
      current: typed(Number(row.I_A), "A"),
      throttle: typed(throttleOf(row), "%"),
    })),
  };
  return { book: thrustBook({ tests: [motorTest, thrustTest] }), sweep };
}

/** The motor's own shaft power in a row, from the current as read: torque k·I − M_c − M_v·ω, times the speed [W]. */
export function shaftPowerOf(
  row: SweepRow,
  motor: { readonly kv: number; readonly frictionTorque: number; readonly viscousTorque: number },
): number {
  const k = 60 / (2 * Math.PI * motor.kv);
  const speed = (2 * Math.PI * Number(row.rpm)) / 60;
  return (k * Number(row.I_A) - motor.frictionTorque - motor.viscousTorque * speed) * speed;
}
