import { describe, expect, it } from "vitest";
import { limitsOf } from "#shared/decide/limits/limits.ts";
import { atMaxCurrent } from "#shared/decide/limits/maxCurrent.ts";
import { KNOWN, withMotor } from "./examples.ts";

const at = (maxCurrent: number | null) => atMaxCurrent({ ...KNOWN, motor: { ...KNOWN.motor, maxCurrent } });

describe("the winding at the maker's greatest current, held", () => {
  // By hand, 0.19 Ω and 7 K/W: I_lim = 1/√(7·0.19·0.00393) = 13.832 A; at 9 A q = 107.73 K, T = T_a + q[1 + 0.00393(T_a − 293.15)]/(1 − 0.00393·q).
  it("settles as the heat balance says, and from the limit current on doesn't", () => {
    const ambient = KNOWN.build.air.temperature;
    const settles = ambient + (107.73 * (1 + 0.00393 * (ambient - 293.15))) / (1 - 0.00393 * 107.73);
    expect(at(9)?.settlesAt).toBeCloseToRelative(settles, 1e-9);
    expect(at(9)?.limitCurrent).toBeCloseToRelative(13.832, 1e-4);
    expect(at(13.8)?.settlesAt).toBeGreaterThan(10_000);
    expect(at(13.9)?.settlesAt).toBeNull();
  });

  // The settled winding meets its limit of 393.15 K at I = √((T − T_a)/(R_th·R(T))).
  it("passes its limit in a finite time above the current that settles there, never below", () => {
    const rise = 393.15 - KNOWN.build.air.temperature;
    const border = Math.sqrt(rise / (7 * 0.19 * (1 + 0.00393 * 100)));
    expect(at(0.999 * border)?.timeToLimit).toBeNull();
    expect(at(1.001 * border)?.timeToLimit).toBeGreaterThan(45);
    expect(at(20)?.timeToLimit).toBeLessThan(45);
  });

  it("without a greatest current or a thermal resistance is not known; without a time constant has no time", () => {
    expect(at(null)).toBeNull();
    expect(atMaxCurrent(withMotor({ thermalResistance: null, thermalTimeConstant: null }))).toBeNull();
    const timeless = limitsOf(withMotor({ thermalTimeConstant: null })).maxCurrent;
    expect(timeless).toMatchObject({ current: 9, timeToLimit: null });
  });
});
