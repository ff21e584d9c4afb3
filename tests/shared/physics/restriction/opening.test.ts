import { describe, expect, it } from "vitest";
import { openingFlow } from "#shared/physics/restriction/opening.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const air = { density: 1.2 };
const slot = { area: 4e-6 };

describe("opening", () => {
  it("without a coefficient of its own takes 0.61", () => {
    expect(openingFlow(slot, air, 300)).toBeCloseToRelative(0.61 * 4e-6 * Math.sqrt(500), 1e-14);
    expect(openingFlow({ ...slot, dischargeCoefficient: 0.8 }, air, 300)).toBeCloseToRelative(
      0.8 * 4e-6 * Math.sqrt(500),
      1e-14,
    );
  });

  it("with no pressure or no area gives exactly 0", () => {
    expect(openingFlow(slot, air, 0)).toBe(0);
    expect(openingFlow({ area: 0 }, air, 300)).toBe(0);
  });

  it("refuses what can't be, by name", () => {
    expectOutOfRange(() => openingFlow({ area: -1 }, air, 300), "opening.area");
    expectOutOfRange(
      () => openingFlow({ area: 1e-6, dischargeCoefficient: 0 }, air, 300),
      "opening.dischargeCoefficient",
    );
    expectOutOfRange(() => openingFlow(slot, { density: 0 }, 300), "air.density");
    expectOutOfRange(() => openingFlow(slot, air, Number.NaN), "pressure");
  });
});
