// Source: open motor and propeller test data by StrawsonDesign, MIT (tests/fixtures/motor-prop-two-voltages/SOURCE.md).
// Bounds: the same chain computed outside the project misses the 11.1 V speed by a median of about +1.7 %, n ∝ V by about 7 %.
import { describe, expect, it } from "vitest";
import { fitMotor } from "#shared/fit/motorFit.ts";
import { RPM, torqueConstant } from "#shared/physics/motor.ts";
import { csvFixture, quantileOf } from "#tests/support/csvFixture.ts";
import { heldAgainst } from "#tests/support/outside.ts";

const rows = csvFixture("motor-prop-two-voltages/rows.csv")
  .filter((row) => row.esc_us === "2000" && Number(row.rpm) > 0)
  .map((row) => ({
    motor: row.motor_code,
    propeller: row.prop_code,
    nominal: row.V_nominal,
    voltage: Number(row.V),
    current: Number(row.I_A),
    rpm: Number(row.rpm),
    thrust: Number(row.thrust_gf),
  }));
const slow = rows.filter((row) => row.nominal === "7.4");
const fast = rows.filter((row) => row.nominal === "11.1" && row.voltage >= 10.4);
const motors = [...new Set(slow.map((row) => row.motor))];

/** ω where V − R·I = k·ω with the load's torque k·I = q·ω², q from the 7.4 V row: a quadratic in ω [rad/s] */
function predictedSpeed(motor: { kv: number; resistance: number }, at: (typeof rows)[0], voltage: number) {
  const k = torqueConstant(motor.kv);
  const q = (k * at.current) / (RPM * at.rpm) ** 2;
  const a = (motor.resistance * q) / k;
  return (-k + Math.sqrt(k * k + 4 * a * voltage)) / (2 * a);
}

const fits = new Map(
  motors.map((motor) => [motor, fitMotor({ rows: slow.filter((row) => row.motor === motor) })]),
);
const misses = fast.flatMap((row) => {
  const before = slow.find((one) => one.motor === row.motor && one.propeller === row.propeller);
  const fit = fits.get(row.motor);
  if (!before || !fit) return [];
  const rpm = predictedSpeed(fit, before, row.voltage) / RPM;
  return [
    {
      speed: rpm / row.rpm - 1,
      thrust: (before.thrust * (rpm / before.rpm) ** 2) / row.thrust - 1,
      proportional: (before.rpm * row.voltage) / before.voltage / row.rpm - 1,
    },
  ];
});

const kept = (name: string, what: string, errors: readonly number[]) =>
  heldAgainst(name, {
    what: `${what}, motors with propellers on a stand`,
    source: "StrawsonDesign, open motor and propeller tests, MIT",
    unit: "%",
    errors: errors.map((error) => 100 * error),
  });
kept(
  "speed-by-voltage",
  "speed at 11.1 V from tests at 7.4 V",
  misses.map(({ speed }) => speed),
);
kept(
  "thrust-by-voltage",
  "thrust at 11.1 V from tests at 7.4 V",
  misses.map(({ thrust }) => thrust),
);
kept(
  "speed-by-proportion",
  "the same speed by n ∝ V, for comparison",
  misses.map(({ proportional }) => proportional),
);

const inWords = (name: string, values: readonly number[]) => {
  const [least, median, most] = [0.05, 0.5, 0.95].map((share) =>
    (100 * quantileOf(values, share)).toFixed(2),
  );
  return `  ${name}: median ${median} %, 5 to 95 % of the rows ${least} to ${most} %`;
};

describe("motors fitted at 7.4 V, full throttle, eight propellers each", () => {
  it.each(motors)("motor %s has its speed constant and resistance told apart", (motor) => {
    const fit = fits.get(motor);
    console.info(
      `  motor ${motor}: K_v ${fit?.kv.toFixed(0)} rpm/V, R ${fit?.resistance.toFixed(4)} Ω, correlation ${fit?.correlation?.toFixed(3)}`,
    );
    expect(fit?.resistance).toBeGreaterThan(0);
    expect(fit?.standardErrors.resistance ?? 1).toBeLessThan(0.15 * (fit?.resistance ?? 0));
  });

  it("predict the speed at 11.1 V with a median error within 2.5 %, far better than n ∝ V", () => {
    console.info(`motor-prop-two-voltages, ${misses.length} rows at 11.1 V from 7.4 V:`);
    console.info(
      inWords(
        "speed",
        misses.map((miss) => miss.speed),
      ),
    );
    console.info(
      inWords(
        "speed by n ∝ V",
        misses.map((miss) => miss.proportional),
      ),
    );
    expect(misses.length).toBeGreaterThan(20);
    const median = quantileOf(
      misses.map((miss) => miss.speed),
      0.5,
    );
    expect(Math.abs(median)).toBeLessThanOrEqual(0.025);
    const proportional = quantileOf(
      misses.map((miss) => miss.proportional),
      0.5,
    );
    expect(proportional).toBeGreaterThan(2 * Math.abs(median));
  });

  it("predict the thrust at 11.1 V with a median error within 6 %", () => {
    const thrust = misses.map((miss) => miss.thrust);
    console.info(inWords("thrust", thrust));
    expect(Math.abs(quantileOf(thrust, 0.5))).toBeLessThanOrEqual(0.06);
  });
});
