import { describe, expect, it } from "vitest";
import { clearanceNotes, compressibilityNotes } from "#shared/physics/fanlaws/notes.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const tested = { clearance: 5e-4, diameter: 0.05 };

describe("clearanceNotes", () => {
  it("of a clearance that was scaled along are none", () => {
    expect(clearanceNotes(tested, { clearance: 4e-4, diameter: 0.04 })).toEqual([]);
    expect(clearanceNotes(tested, { clearance: 5.4e-4, diameter: 0.05 })).toEqual([]);
  });

  it("of the same clearance on a smaller rotor give both ratios and the direction", () => {
    const [note] = clearanceNotes(tested, { clearance: 5e-4, diameter: 0.04 });
    expect(note?.code).toBe("tip-clearance-not-scaled");
    expect(note?.message).toContain("1.25 %");
    expect(note?.message).toContain("1.00 %");
    expect(note?.message).toContain("expect less pressure");
    const [other] = clearanceNotes(tested, { clearance: 5e-4, diameter: 0.06 });
    expect(other?.message).toContain("expect more pressure");
  });

  it("refuses a clearance below 0 and a rotor of no size", () => {
    expectOutOfRange(() => clearanceNotes({ clearance: -1, diameter: 1 }, tested), "rotor.tipClearance");
    expectOutOfRange(() => clearanceNotes(tested, { clearance: 0, diameter: 0 }), "rotor.diameter");
  });
});

describe("compressibilityNotes", () => {
  const codes = (...values: Parameters<typeof compressibilityNotes>) =>
    compressibilityNotes(...values).map(({ code }) => code);

  it("up to 2 kPa and Mach 0.3 are none, beyond them one each", () => {
    expect(codes(2000, 102, 340)).toEqual([]);
    expect(codes(2001, 102, 340)).toEqual(["compressible-pressure"]);
    expect(codes(2000, 103, 340)).toEqual(["tip-mach-high"]);
    expect(codes(3000, 150, 340)).toEqual(["compressible-pressure", "tip-mach-high"]);
  });

  it("refuse values below 0 and air without sound", () => {
    expectOutOfRange(() => compressibilityNotes(-1, 1, 340), "pressure");
    expectOutOfRange(() => compressibilityNotes(1, -1, 340), "rotor.tipSpeed");
    expectOutOfRange(() => compressibilityNotes(1, 1, 0), "air.soundSpeed");
  });
});
