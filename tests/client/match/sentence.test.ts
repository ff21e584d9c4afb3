import { describe, expect, it } from "vitest";
import { answerSentence, type Finding } from "#client/views/match/sentence.ts";

const finding = (change: {
  wall?: number | null;
  ceiling?: number | null;
  worst?: [number, number | null];
  drive?: [number, number | null];
  own?: Finding["attitudes"];
  turns?: boolean;
}): Finding => {
  const [angle, margin] = change.worst ?? [127, 1.8];
  const [driveAngle, driveMargin] = change.drive ?? [angle, margin];
  const wall = change.wall === undefined ? 2 : change.wall;
  const ceiling = change.ceiling === undefined ? 2.5 : change.ceiling;
  return {
    turns: change.turns ?? true,
    target: 1.5,
    attitudes: [
      { name: "the wall", angle: 90, parked: wall, driving: wall },
      { name: "the ceiling", angle: 180, parked: ceiling, driving: ceiling },
      ...(change.own ?? []),
    ],
    worst: {
      parked: { angle, margin },
      driving: { angle: driveAngle, margin: driveMargin },
    },
  };
};

describe("answerSentence", () => {
  it("says that it holds everywhere, with every margin above the target, and names the tightest attitude", () => {
    expect(answerSentence(finding({}))).toBe(
      "Holds everywhere it must go, with least to spare on the overhang.",
    );
  });

  it("says that tests speak against it, with a conflict in the calibration in use", () => {
    expect(answerSentence({ ...finding({}), contradicted: true })).toBe(
      "Holds everywhere it must go, with least to spare on the overhang. But tests behind it contradict each other or the model.",
    );
  });

  it("says how little is left, with a worst margin between 1 and the target, and names the target", () => {
    expect(answerSentence(finding({ worst: [127, 1.2] }))).toBe(
      "Holds everywhere it must go, but with less to spare on the overhang than the 1.5 × you want.",
    );
  });

  it("names the overhang by its angle, with only the worst attitude below 1, as what is lost", () => {
    expect(answerSentence(finding({ wall: 1.1, worst: [127, 0.9] }))).toBe(
      "Holds the wall and the ceiling but not the worst overhang at 127°.",
    );
  });

  it("names wall and overhang as lost, with the wall below 1 too, and keeps the ceiling", () => {
    expect(answerSentence(finding({ wall: 0.98, ceiling: 1.4, worst: [127, 0.8] }))).toBe(
      "Holds the ceiling but not the wall or the worst overhang at 127°.",
    );
  });

  it("does not name the worst twice, with an attitude of the user's own at the same angle, as lost", () => {
    const own = [{ name: "the roof pane at 127°", angle: 127.2, parked: 0.9, driving: 0.9 }];
    expect(answerSentence(finding({ own, worst: [127.1, 0.9] }))).toBe(
      "Holds the wall and the ceiling but not the roof pane at 127°.",
    );
  });

  it("says that it falls, with no attitude held, and lists them", () => {
    expect(answerSentence(finding({ wall: 0.5, ceiling: 0.7, worst: [127, 0.4] }))).toBe(
      "Falls: the pull is too small for the wall and the ceiling.",
    );
  });

  it("says that it falls, with a rotor that stands still, and why", () => {
    expect(answerSentence(finding({ turns: false }))).toMatch(/^Falls: the rotor comes to no steady speed/);
  });

  it("adds that it cannot climb, with parked margins above and driving ones below 1, and where", () => {
    expect(answerSentence(finding({ drive: [131, 0.9] }))).toBe(
      "Holds everywhere it must go, with least to spare on the overhang. It cannot drive up the worst overhang at 131°.",
    );
  });

  it("holds exactly at the limit, with a margin of 1, and is below target", () => {
    expect(answerSentence(finding({ worst: [127, 1] }))).toMatch(/^Holds everywhere it must go, but/);
  });

  it("needs no pull, with margins that are null, and says so", () => {
    expect(answerSentence(finding({ wall: null, ceiling: null, worst: [0, null] }))).toBe(
      "Holds everywhere it must go without any pull.",
    );
  });
});
