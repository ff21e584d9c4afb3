import { describe, expect, it } from "vitest";
import { motorBasis } from "#shared/book/motorBasis.ts";
import { propellerBasis } from "#shared/book/propellerBasis.ts";
import { fitPropeller } from "#shared/fit/propellerFit.ts";
import {
  bookOf,
  DIAMETER,
  GRAM_FORCE,
  isFull,
  motors,
  rows,
  shaftPowerOf,
} from "#tests/support/propellerSweeps.ts";

describe("measured sweeps of small propellers, logged as thrust tests", () => {
  it.each(motors)("motor %s: the book's C_T and C_P are those of the same rows given inline", (motor) => {
    const propeller = rows.find((row) => row.motor_code === motor)?.prop_code ?? "";
    const { book, sweep } = bookOf(motor, propeller);
    const constants = motorBasis(book, "stand-motor")?.constants;
    const answer = propellerBasis(book, "prop");
    if (!constants || answer.basis === "missing") return expect.fail("not known");
    const inline = fitPropeller({
      diameter: DIAMETER,
      rows: sweep.map((row) => {
        const shaftPower = shaftPowerOf(row, constants);
        return {
          rpm: Number(row.rpm),
          thrust: Number(row.thrust_gf) * GRAM_FORCE,
          ...(shaftPower > 0 && isFull(row) ? { shaftPower } : {}),
        };
      }),
    });
    for (const which of ["thrust", "power"] as const) {
      expect(answer.fit[which]?.[0]).toBeCloseToRelative(inline[which]?.[0] ?? Number.NaN, 1e-9);
      expect(answer.fit[which]?.[1]).toBeCloseTo(inline[which]?.[1] ?? Number.NaN, 9);
    }
  });

  it("whose scale was turned: give no coefficients, and the sign of the scale is named", () => {
    const answer = propellerBasis(bookOf("m", "7").book, "prop");
    expect(answer.basis === "missing" && answer.missing.message).toMatch(/sign of the scale/);
  });
});
