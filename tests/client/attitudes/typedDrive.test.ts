import { describe, expect, it } from "vitest";
import { readDrive } from "#client/views/attitudes/typedDrive.ts";

const WHOLE = { diameter: "1 1/4 in", motors: "2", ratio: "50", efficiency: "60 %", stall: "4" };

describe("readDrive", () => {
  it("gives the drive in SI, with every field typed, each in a unit of its own", () => {
    const { drive, stall, problems, missing } = readDrive(WHOLE);
    // 1.25 in = 31.75 mm, by definition
    expect(drive?.wheelRadius).toBeCloseToRelative(0.01905 / 1.2, 1e-12);
    expect(drive).toMatchObject({ motors: 2, gearRatio: 50, gearEfficiency: 0.6 });
    expect(stall).toBeCloseToRelative(4e-3, 1e-12);
    expect([problems.size, missing]).toEqual([0, []]);
  });

  it("gives none and names what is missing, with a field empty and another that can't be", () => {
    const { drive, problems, missing } = readDrive({ ...WHOLE, stall: " ", motors: "1.5" });
    expect(drive).toBeNull();
    expect(missing).toEqual(["drive motors", "stall torque of one motor"]);
    expect([...problems]).toEqual([
      ["motors", 'Read "1.5"; allowed: a whole number, 1 to 16, for example "2".'],
    ]);
  });
});
