import { describe, expect, it } from "vitest";
import { rotorPoints } from "#shared/fit/rotorPoints.ts";

const ROW = { rpm: 24000, flow: 0.004, pressure: 900 };
const psiOf = (rows: Parameters<typeof rotorPoints>[1]) => rotorPoints(0.04, rows).map((point) => point.psi);

describe("rotorPoints, on rows without a density", () => {
  // By hand: ψ = 2Δp/(ρu²), u = π·0.04·400 = 50.265 m/s.
  const byHand = (density: number) => (2 * 900) / (density * (Math.PI * 0.04 * 400) ** 2);

  it("takes standard air, 1.2 kg/m³, where no row states one", () => {
    expect(psiOf([ROW])[0]).toBeCloseToRelative(byHand(1.2), 1e-12);
  });

  it("takes the mean of the rows that state one", () => {
    const [, , unstated] = psiOf([{ ...ROW, density: 1.16 }, { ...ROW, density: 1.18 }, ROW]);
    expect(unstated).toBeCloseToRelative(byHand(1.17), 1e-12);
  });
});
