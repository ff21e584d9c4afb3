import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { type Climber, driveAnswer } from "#client/views/attitudes/driving.ts";
import { type Rose, roseOf } from "#client/views/attitudes/rose.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const DRIVE = { wheelRadius: 0.016, motors: 2, gearRatio: 50, gearEfficiency: 0.6 };
const STALL = 2e-3;

function rose(): Rose {
  const book = demoBook();
  const found = roseOf(solve(book, book.builds[0].data));
  if (!found) throw new Error("The demo's first build has no numbers.");
  return found;
}

const climberOf = ({ input, made }: Rose): Climber => ({ vehicle: input.vehicle, made });

describe("driveAnswer", () => {
  it("asks (W + resistance)·r/(n·i·η) of each motor, about a wall, by statics written out here", () => {
    const found = rose();
    const { vehicle } = found.input;
    const weight = vehicle.mass * (1 + vehicle.jolt) * 9.80665;
    const { rollingResistance: c, skirtFriction, skirtShare: share } = vehicle;
    const drag = c * (1 - share) + skirtFriction * share;
    const { hardest } = driveAnswer(climberOf(found), DRIVE, STALL);
    const radians = (hardest.angle * Math.PI) / 180;
    const normal = found.made + weight * Math.cos(radians);
    const torque = ((weight * Math.sin(radians) + drag * normal) * 0.016) / (2 * 50 * 0.6);
    expect(hardest.torque).toBeCloseToRelative(torque, 1e-12);
    expect(hardest.share).toBeCloseToRelative(torque / STALL, 1e-12);
    expect(Math.abs(hardest.angle - (Math.atan2(1, drag) * 180) / Math.PI)).toBeLessThanOrEqual(0.5);
  });

  it("takes half of the stall torque, with the gear ratio that it names put in, and is no longer flagged", () => {
    const found = rose();
    const weak = found.input.vehicle.mass * 1e-3;
    const answer = driveAnswer(climberOf(found), DRIVE, weak);
    expect(answer.hardest.flagged).toBe(true);
    const again = driveAnswer(
      climberOf(found),
      { ...DRIVE, gearRatio: answer.enoughRatio * (1 + 1e-9) },
      weak,
    );
    expect(again.hardest.share).toBeCloseToRelative(0.5, 1e-6);
    expect(again.hardest.flagged).toBe(false);
  });

  it("never asks more where the wheels grip worst, than where the motors work hardest", () => {
    const { atWorst, hardest } = driveAnswer(climberOf(rose()), DRIVE, STALL);
    expect(atWorst?.torque).toBeLessThanOrEqual(hardest.torque * (1 + 1e-4));
  });

  it("slips nowhere, with pull to spare, and slips about the worst overhang, with half of what climbing needs", () => {
    const found = rose();
    expect(driveAnswer(climberOf(found), DRIVE, STALL).slips).toBe("none");
    const weak = driveAnswer(
      { ...climberOf(found), made: found.worst.driving.driving.pull / 2 },
      DRIVE,
      STALL,
    );
    if (typeof weak.slips === "string") throw new Error("it slips nowhere");
    expect(weak.slips.from).toBeLessThan(found.worst.driving.angle);
    expect(weak.slips.to).toBeGreaterThan(found.worst.driving.angle);
    expect(Math.abs((weak.atWorst?.angle ?? 0) - found.worst.driving.angle)).toBeLessThanOrEqual(1);
  });

  it("without the friction of the wheels: the same torque, no word on where they slip", () => {
    const known = climberOf(rose());
    const unknown = { ...known, vehicle: { ...known.vehicle, wheelFriction: null } };
    const answer = driveAnswer(unknown, DRIVE, STALL);
    expect(answer.hardest).toEqual(driveAnswer(known, DRIVE, STALL).hardest);
    expect([answer.slips, answer.atWorst]).toEqual(["unknown", null]);
  });
});
