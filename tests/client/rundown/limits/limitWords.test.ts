import { describe, expect, it } from "vitest";
import { replyTo } from "#client/views/rundown/limits/answer.ts";
import {
  detailText,
  energyText,
  limitText,
  nearText,
  rpmText,
  timeText,
  unbroken,
  valueText,
  windingSentence,
} from "#client/views/rundown/limits/limitWords.ts";
import type { LimitsInput } from "#shared/decide/limits/input.ts";
import type { LimitKey } from "#shared/decide/limits/limit.ts";
import { limitsOf } from "#shared/decide/limits/limits.ts";
import { KNOWN, withMotor, withSeries } from "#tests/shared/decide/limits/examples.ts";

const plain = (text: string) => text.replace(/\s/g, " ");

function rowOf(key: LimitKey, input: LimitsInput = KNOWN) {
  const limits = limitsOf(input);
  const limit = limits.limits.find((each) => each.key === key);
  if (!limit) throw new Error(`no limit ${key}`);
  const texts = [valueText(limit), limitText(limit), nearText(limit), detailText(limit, limits)];
  const [value, of, near, detail] = texts.map(plain);
  return { value, of, near, detail };
}

describe("a limit's row", () => {
  it("of the winding says degrees, its limit, the part of the way and the longest safe run", () => {
    const { value, of, near, detail } = rowOf("winding", withSeries(3));
    expect(value).toMatch(/^\d+ °C$/);
    expect(of).toBe("limit 120 °C");
    expect(near).toMatch(/^beyond, \d+ % of the way$/);
    expect(detail).toMatch(/^Longest safe run from cold: \d+ s, at this supply held\.$/);
  });

  it("of the winding that stays within says that it never gets there", () => {
    const calm = { ...KNOWN, motor: { ...KNOWN.motor, windingLimit: 500 } };
    expect(rowOf("winding", calm).detail).toBe("From cold it never reaches its limit at this supply.");
  });

  it("of the winding without a time constant names what gives it", () => {
    const { detail } = rowOf("winding", withMotor({ thermalTimeConstant: null }));
    expect(detail).toMatch(/^Time to its limit: needs the motor's thermal time constant/);
  });

  it("of something unknown shows a dash, not judged, and what it needs", () => {
    const cold = withMotor({ thermalResistance: null, thermalTimeConstant: null });
    expect(rowOf("winding", cold)).toMatchObject({ value: "–", near: "not judged" });
    expect(rowOf("winding", cold).detail).toMatch(/^Needs: the motor's thermal resistance/);
    expect(rowOf("rotor-speed", { ...KNOWN, rotor: null })).toMatchObject({ of: "not known" });
    expect(rowOf("rotor-speed", { ...KNOWN, rotor: null }).detail).toMatch(
      /^Needs: the rotor's material and bore.*Tip \d+ m\/s/,
    );
  });

  it("of the motor's current says how long its greatest one may last, and where it settles or that it never does", () => {
    const held = (maxCurrent: number) =>
      rowOf("motor-current", { ...KNOWN, motor: { ...KNOWN.motor, maxCurrent } }).detail;
    expect(held(2)).toMatch(/^Held at 2\.0 A, the winding settles at \d+ °C\.$/);
    expect(held(9)).toMatch(
      /^Held at 9\.0 A, the winding passes 120 °C after \d+ s and settles at \d+ °C\.$/,
    );
    expect(held(20)).toMatch(
      /^Held at 20\.0 A, the winding passes 120 °C after [\d.]+ s and never settles: from 13\.8 A on it runs away\.$/,
    );
  });

  it("of the motor's voltage says the law in numbers", () => {
    const { value, of, detail } = rowOf("motor-voltage");
    expect(value).toMatch(/^\d\.\d\d V$/);
    expect(of).toBe("rated 7.40 V");
    expect(detail).toMatch(
      /^At \d\.\d\d × the rated voltage: pressure × \d\.\d\d, heat × \d\.\d\d; this build solved at both, cold\.$/,
    );
  });

  it("of the rotor says the safety factor and that it has no source", () => {
    const { value, detail } = rowOf("rotor-speed");
    expect(value).toMatch(/^\d\d \d00 rpm$/);
    expect(detail).toMatch(
      /half of the [\d ]+ rpm at which it bursts \(safety factor 2 on speed, common practice, no source\)/,
    );
  });
});

describe("figures of the limits", () => {
  it("are rounded as they are known: rpm to hundreds, seconds, then minutes, joules to two digits", () => {
    expect(plain(rpmText(3120.5))).toBe("29 800 rpm");
    expect([9.84, 48.2, 119, 121].map((time) => plain(timeText(time)))).toEqual([
      "9.8 s",
      "48 s",
      "119 s",
      "2.0 min",
    ]);
    const energy = { key: "blade", missing: null, caution: "rotor" } as const;
    expect(plain(energyText({ ...energy, energy: 0.1284, speed: 52.3 }))).toBe("0.13 J at 52 m/s");
    expect(energyText({ ...energy, energy: null, speed: null })).toBe("–");
  });

  it("keep a factor with its sign", () => {
    expect(unbroken("pressure × 2.0")).toBe("pressure\u00a0×\u00a02.0");
  });
});

describe("the winding's picture in words", () => {
  it("says when the limit is reached, or that it is not", () => {
    expect(plain(windingSentence(limitsOf(withSeries(3))))).toMatch(
      /The limit of 120 °C is reached after \d+ s\.$/,
    );
    const calm = { ...KNOWN, motor: { ...KNOWN.motor, windingLimit: 500 } };
    expect(plain(windingSentence(limitsOf(calm)))).toMatch(/The limit of 227 °C is not reached\.$/);
  });
});

describe("replyTo", () => {
  it("says in words what can't be, and gives the limits otherwise", () => {
    expect(replyTo(KNOWN)).toHaveProperty("answered");
    const wide = KNOWN.rotor && { ...KNOWN.rotor, boreDiameter: 0.1 };
    expect(replyTo({ ...KNOWN, rotor: wide })).toEqual({
      problem: expect.stringMatching(/rotor\.boreRadius is 0\.05, allowed/),
    });
  });
});
