import { describe, expect, it } from "vitest";
import { fitMotor } from "#shared/fit/motorFit.ts";
import { fitVoltage, type MotorRow } from "#shared/fit/voltageFit.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

/** V = R·I + n/K_v, written in rpm and rpm/V, as the data sheet has it. */
const row = (rpm: number, current: number, more: Partial<MotorRow> = {}): MotorRow => ({
  voltage: 0.15 * current + rpm / 1200,
  current,
  rpm,
  ...more,
});
const MADE = { kv: 1200, resistance: 0.15 };
const K = 60 / (2 * Math.PI * MADE.kv);

const loads = [row(8000, 9), row(9500, 6), row(11_000, 3)];

describe("fitMotor, on exact rows of a known motor", () => {
  it("recovers K_v and R from loads apart, a no-load and a blocked row", () => {
    const fit = fitMotor({ rows: [...loads, row(12_000, 0.4, { noLoad: true }), row(0, 15)] });
    expect(fit.kv).toBeCloseToRelative(MADE.kv, 1e-9);
    expect(fit.resistance).toBeCloseToRelative(MADE.resistance, 1e-9);
    expect(fit.frictionTorque).toBeCloseToRelative(K * 0.4, 1e-9);
    expect(fit.viscousTorque).toBe(0);
    expect(fit.warnings).toEqual([]);
  });

  it("reads constant and viscous friction from no-load rows at several speeds", () => {
    const free = [4000, 8000, 12_000].map((rpm) => {
      const omega = (rpm * 2 * Math.PI) / 60;
      return row(rpm, (2e-3 + 1.5e-6 * omega) / K, { noLoad: true });
    });
    const fit = fitMotor({ rows: [...loads, ...free] });
    expect(fit.frictionTorque).toBeCloseToRelative(2e-3, 1e-6);
    expect(fit.viscousTorque).toBeCloseToRelative(1.5e-6, 1e-6);
  });

  it.each([
    { currents: [0.6, 0.5, 0.4], code: "no-load-current-falls", viscous: false },
    { currents: [0.1, 0.5, 0.9], code: "no-load-current-steep", viscous: true },
  ])(
    "a no-load current that would push ($currents) is said, and no part of it is negative",
    ({ currents, code, viscous }) => {
      const free = [4000, 8000, 12_000].map((rpm, i) => row(rpm, currents[i], { noLoad: true }));
      const fit = fitMotor({ rows: [...loads, ...free] });
      expect(fit.warnings.map((note) => note.code)).toEqual([code]);
      expect(fit.frictionTorque > 0).toBe(!viscous);
      expect(fit.viscousTorque > 0).toBe(viscous);
    },
  );

  it("without a no-load row takes friction as 0 and names the run that is missing", () => {
    const fit = fitMotor({ rows: loads });
    expect([fit.frictionTorque, fit.viscousTorque]).toEqual([0, 0]);
    expect(fit.warnings.map((note) => note.code)).toEqual(["no-load-run-missing"]);
  });

  it("leaves rows without voltage out and counts them", () => {
    const fit = fitMotor({ rows: [...loads, { voltage: 0, current: 0, rpm: 0 }] });
    expect(fit.kv).toBeCloseToRelative(MADE.kv, 1e-9);
    expect(fit.warnings.find((note) => note.code === "empty-rows")?.message).toMatch(/^1 /);
  });
});

describe("fitMotor, on noisy rows", () => {
  const noise = [0.02, -0.03, 0.01, 0.025, -0.02, -0.01];
  const rows = [
    row(7000, 10),
    row(8500, 8),
    row(9500, 6),
    row(10_500, 4),
    row(11_300, 2),
    row(12_000, 0.4),
  ].map((one, i) => ({ ...one, voltage: one.voltage + noise[i] }));
  // Computed by hand from the normal equations of two unknowns, Σ I², Σ Iω, Σ ω².
  it("gives constants, standard errors and correlation of the two-unknown normal equations", () => {
    const sum = (f: (r: MotorRow, w: number) => number) =>
      rows.reduce((total, r) => total + f(r, (r.rpm * 2 * Math.PI) / 60), 0);
    const [ii, iw, ww] = [sum((r) => r.current ** 2), sum((r, w) => r.current * w), sum((_, w) => w * w)];
    const [iv, wv] = [sum((r) => r.current * r.voltage), sum((r, w) => w * r.voltage)];
    const determinant = ii * ww - iw * iw;
    const resistance = (iv * ww - wv * iw) / determinant;
    const k = (wv * ii - iv * iw) / determinant;
    const variance = sum((r, w) => (r.voltage - resistance * r.current - k * w) ** 2) / (rows.length - 2);
    const fit = fitMotor({ rows });
    expect(fit.resistance).toBeCloseToRelative(resistance, 1e-9);
    expect(fit.kv).toBeCloseToRelative(60 / (2 * Math.PI * k), 1e-9);
    expect(fit.standardErrors.resistance).toBeCloseToRelative(Math.sqrt((variance * ww) / determinant), 1e-9);
    expect(fit.standardErrors.kv).toBeCloseToRelative(
      (fit.kv * Math.sqrt((variance * ii) / determinant)) / k,
      1e-9,
    );
    expect(fit.correlation).toBeCloseToRelative(iw / Math.sqrt(ii * ww), 1e-9);
  });
});

describe("fitMotor, on rows that can't tell K_v from R", () => {
  const refused = (rows: MotorRow[], resistance?: number) => () => fitMotor({ rows, resistance });
  it.each([
    ["a single row", refused([row(9000, 5)])],
    ["the same row three times", refused([row(9000, 5), row(9000, 5), row(9000, 5)])],
    ["two rows at nearly one load", refused([row(9000, 5), row(9010, 5.05)])],
    ["current and speed in one ratio", refused([row(4000, 2), row(8000, 4), row(12_000, 6)])],
    ["no current at all", refused([row(9000, 0), row(11_000, 0)])],
    [
      "scatter that makes R negative",
      refused([
        { voltage: 8, current: 5, rpm: 9000 },
        { voltage: 8, current: 6, rpm: 9300 },
        { voltage: 8, current: 7, rpm: 9450 },
      ]),
    ],
    [
      "scatter larger than what R makes",
      refused([
        { voltage: 8.0, current: 5, rpm: 9000 },
        { voltage: 8.3, current: 5.5, rpm: 9000 },
        { voltage: 7.9, current: 6, rpm: 8900 },
        { voltage: 8.2, current: 6.5, rpm: 8950 },
      ]),
    ],
  ])("%s: refused, with the combination that is known and what to measure", (_, call) => {
    expect(call).toThrow(NotEnoughDataError);
    expect(call).toThrow(/K_v = \d+\/\([\d.]+ − [\d.]+·R\) rpm\/V/);
    expect(call).toThrow(/ohmmeter.*loads further apart.*no-load run/);
  });

  it("no turning row: asks for one", () => {
    expect(refused([row(0, 5), row(0, 10)])).toThrow(/turning/);
    expect(refused([{ voltage: 0, current: 0, rpm: 0 }])).toThrow(NotEnoughDataError);
  });

  it("an ohmmeter's reading fixes R, and the rest fits", () => {
    const fit = fitMotor({ rows: [row(9000, 5), row(9010, 5.05)], resistance: 0.15 });
    expect(fit.kv).toBeCloseToRelative(MADE.kv, 1e-9);
    expect(fit.resistance).toBe(0.15);
    expect(fit.standardErrors.resistance).toBeNull();
    expect(fit.correlation).toBeNull();
    expectAllFinite(fit);
  });

  it("an ohmmeter's reading that takes more than the voltage is refused", () => {
    expect(refused([row(9000, 5), row(8000, 7)], 5)).toThrow(/takes more than the whole voltage/);
  });

  it("two rows far apart are taken, their uncertainty said to be unknown", () => {
    const fit = fitMotor({ rows: [row(0, 15), row(12_000, 0.4, { noLoad: true })] });
    expect(fit.kv).toBeCloseToRelative(MADE.kv, 1e-9);
    expect(fit.standardErrors).toEqual({ kv: null, resistance: null });
    expect(fit.warnings.map((note) => note.code)).toEqual(["no-residual"]);
  });

  it("repeated rows don't pass for a residual", () => {
    const pair = [row(0, 15), row(12_000, 0.4)];
    expect(fitMotor({ rows: [...pair, ...pair, ...pair] }).standardErrors).toEqual({
      kv: null,
      resistance: null,
    });
  });

  it("the pair stays available where each alone is not known", () => {
    const rows = [row(9000, 5), row(9200, 4.6), row(8900, 5.2)].map((one, i) => ({
      ...one,
      voltage: one.voltage + [0.05, -0.05, 0.04][i],
    }));
    const pair = fitVoltage(rows);
    expect(pair.measuredSeparately).toBe(false);
    const omega = (9050 * 2 * Math.PI) / 60;
    expect(pair.resistance * 4.9 + pair.backEmf * omega).toBeCloseToRelative(0.15 * 4.9 + 9050 / 1200, 0.01);
  });
});

describe("fitMotor, on readings that can't be", () => {
  it.each([
    ["voltage", -1],
    ["current", -0.1],
    ["rpm", Number.NaN],
  ])("a %s of %s is refused by its path", (key, value) => {
    expectOutOfRange(
      () => fitMotor({ rows: [loads[0], { ...loads[1], [key]: value }, loads[2]] }),
      `rows.1.${key}`,
    );
  });
  it.each([0, -1, Number.NaN])("a resistance of %s is refused", (resistance) => {
    expectOutOfRange(() => fitMotor({ rows: loads, resistance }), "resistance");
  });
});
