// Source: open motor and propeller test data by StrawsonDesign, MIT (tests/fixtures/motor-prop-two-voltages/SOURCE.md).
import { describe, expect, it } from "vitest";
import { motorBasis } from "#shared/book/motorBasis.ts";
import { propellerBasis } from "#shared/book/propellerBasis.ts";
import { fitPropeller } from "#shared/fit/propellerFit.ts";
import { csvFixture } from "#tests/support/csvFixture.ts";
import { thrustBook, typed } from "#tests/support/thrustBook.ts";

/** Five-inch propellers [m]. */
const DIAMETER = 5 * 0.0254;
const GRAM_FORCE = 9.80665e-3;
const rows = csvFixture("motor-prop-two-voltages/rows.csv").filter(
  (row) => Number(row.rpm) > 0 && !(row.V_nominal === "11.1" && Number(row.V) < 10.4),
);
const propellers = [...new Set(rows.map((row) => row.prop_code))];
const motors = [...new Set(rows.map((row) => row.motor_code))];

/** 1000 to 2000 µs, as a share [%]. */
const throttleOf = (row: (typeof rows)[number]): number => (Number(row.esc_us) - 1000) / 10;
const isFull = (row: (typeof rows)[number]): boolean => throttleOf(row) === 100;

/** All thrusts of motor m with propellers 7 and 8 stand below 0 in the data: the scale was turned. */
const isTurned = (motor: string, propeller: string): boolean =>
  motor === "m" && ["7", "8"].includes(propeller);

/** Full throttle at 7.4 V gives the motor; its sweeps at both voltages are thrust tests. */
function bookOf(motor: string, propeller: string) {
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

describe("published sweeps of small propellers, logged as thrust tests", () => {
  it.each(motors)("motor %s: the book's C_T and C_P are those of the same rows given inline", (motor) => {
    const propeller = rows.find((row) => row.motor_code === motor)?.prop_code ?? "";
    const { book, sweep } = bookOf(motor, propeller);
    const constants = motorBasis(book, "stand-motor")?.constants;
    const answer = propellerBasis(book, "prop");
    if (!constants || answer.basis === "missing") return expect.fail("not known");
    const k = 60 / (2 * Math.PI * constants.kv);
    const inline = fitPropeller({
      diameter: DIAMETER,
      rows: sweep.map((row) => {
        const speed = (2 * Math.PI * Number(row.rpm)) / 60;
        const torque = k * Number(row.I_A) - constants.frictionTorque - constants.viscousTorque * speed;
        const thrust = Number(row.thrust_gf) * GRAM_FORCE;
        return {
          rpm: Number(row.rpm),
          thrust,
          ...(torque > 0 && isFull(row) ? { shaftPower: torque * speed } : {}),
        };
      }),
    });
    for (const which of ["thrust", "power"] as const) {
      expect(answer.fit[which]?.[0]).toBeCloseToRelative(inline[which]?.[0] ?? Number.NaN, 1e-9);
      expect(answer.fit[which]?.[1]).toBeCloseTo(inline[which]?.[1] ?? Number.NaN, 9);
    }
    console.info(
      `  motor ${motor}, propeller ${propeller}: C_T ${answer.fit.thrust[0].toFixed(4)}, C_P ${answer.fit.power?.[0].toFixed(4)}, ${sweep.length} rows`,
    );
  });

  it("whose scale was turned: give no coefficients, and the sign of the scale is named", () => {
    const answer = propellerBasis(bookOf("m", "7").book, "prop");
    expect(answer.basis === "missing" && answer.missing.message).toMatch(/sign of the scale/);
  });

  it("at full throttle give one propeller the same C_P whatever motor turned it, less than half as scattered as the current at part throttle would", () => {
    for (const propeller of propellers) {
      const usable = motors.filter((motor) => !isTurned(motor, propeller));
      const full = usable.map((motor) => powerOf(motor, propeller, (row) => isFull(row)));
      const part = usable.map((motor) => powerOf(motor, propeller, (row) => !isFull(row)));
      console.info(
        `  propeller ${propeller}: C_P at full throttle ${rangeOf(full)}, by part throttle's current ${rangeOf(part)}`,
      );
      expect(scatterOf(full)).toBeLessThan(0.5 * scatterOf(part));
    }
  });
});

/** C_P of a propeller from some rows of one motor's sweep, their current taken as the motor's own. */
function powerOf(motor: string, propeller: string, wanted: (row: (typeof rows)[number]) => boolean): number {
  const { book, sweep } = bookOf(motor, propeller);
  const constants = motorBasis(book, "stand-motor")?.constants;
  if (!constants) return Number.NaN;
  const k = 60 / (2 * Math.PI * constants.kv);
  const used = sweep.filter(wanted).map((row) => {
    const speed = (2 * Math.PI * Number(row.rpm)) / 60;
    const torque = k * Number(row.I_A) - constants.frictionTorque - constants.viscousTorque * speed;
    const thrust = Number(row.thrust_gf) * GRAM_FORCE;
    return { rpm: Number(row.rpm), thrust, shaftPower: Math.max(0, torque * speed) };
  });
  return fitPropeller({ diameter: DIAMETER, rows: used }).power?.[0] ?? Number.NaN;
}

/** Standard deviation of ln C_P [-]. */
function scatterOf(values: readonly number[]): number {
  const logs = values.map(Math.log);
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  return Math.sqrt(logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) / (logs.length - 1));
}

const rangeOf = (values: readonly number[]): string =>
  `${Math.min(...values).toFixed(4)} to ${Math.max(...values).toFixed(4)}`;
