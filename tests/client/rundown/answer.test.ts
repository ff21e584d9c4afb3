import { describe, expect, it } from "vitest";
import { answerTo, replyTo } from "#client/views/rundown/answer.ts";
import { DRIVE_CURRENT, SHARE, START_CHARGE, TARGET_MARGIN } from "#client/views/rundown/handles.ts";
import { panelsOf } from "#client/views/rundown/panels.ts";
import { rundownTable } from "#client/views/rundown/table.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { isGood, readNumber } from "#shared/units/readNumber.ts";
import { question } from "./examples.ts";

describe("answerTo", () => {
  const answered = answerTo(question);
  const { input } = question;

  it("gives minutes and volts, with the worked example of docs/method/run-down.md, as printed there", () => {
    const [ceiling, wall, worst] = answered.tracks;
    expect(answered.end.time).toBeCloseTo(593.4, 1);
    expect(ceiling.holds.state).toBe("holds-to-the-end");
    expect(wall.holds.packVoltage).toBeCloseTo(6.254, 3);
    expect(worst.angle).toBeCloseTo(124.2, 1);
    expect(worst.holds.time).toBeCloseTo(332.9, 1);
    expect(worst.target.state).toBe("never-held");
  });

  it("adds the worst attitude, with wall and ceiling asked for, at the angle that the run itself finds", () => {
    const alone = runDown(input);
    expect(answered.tracks.map((track) => track.key)).toEqual(["at 180", "at 90", "worst"]);
    expect(answered.tracks[2].angle).toBe(alone.attitudes[2].angle);
    expect(answered.tracks[2].holds).toEqual(alone.attitudes[2].holds);
    expect(answered.tracks[2].name).toBe("the worst overhang");
  });

  it("leaves the worst out, with an attitude of the user's own at its angle", () => {
    const angle = answered.tracks[2].angle + 0.2;
    const own = { key: "at own", title: "Pane", name: "the pane", angle };
    const tracks = answerTo({ ...question, named: [...question.named, own] }).tracks;
    expect(tracks.map((track) => track.key)).toEqual(["at 180", "at 90", "at own"]);
  });

  it("draws margins, with the wall lost on the way, that pass 1 where the run says it is lost", () => {
    const wall = answered.tracks[1];
    const lost = wall.holds.time ?? Number.NaN;
    answered.samples.forEach(({ time }, i) => {
      expect((wall.margins[i] ?? Number.NaN) >= 1, `at ${time} s`).toBe(time <= lost);
    });
  });

  it("tells how the winding is taken, with and without its thermal figures, and draws it only where known", () => {
    const withMotor = (change: object) =>
      answerTo({ ...question, input: { ...input, motor: { ...input.motor, ...change } } });
    const cold = withMotor({ thermalResistance: null, thermalTimeConstant: null });
    expect(answered.winding).toBe("followed");
    expect(withMotor({ thermalTimeConstant: null }).winding).toBe("settled");
    expect(cold.winding).toBeNull();
    expect(panelsOf(cold).map((panel) => panel.key)).toEqual(["margins", "voltage", "speed", "pressure"]);
    expect(panelsOf(answered).map((panel) => panel.key)).toEqual([
      "margins",
      "voltage",
      "speed",
      "pressure",
      "winding",
    ]);
    expect(panelsOf({ ...answered, windingEstimated: true })[4].plot.y.label).toMatch(/\(estimated\)$/);
  });

  it("gives the table, with every sample, in minutes, percent and °C", () => {
    const table = rundownTable(answered);
    const last = table.rows.at(-1) ?? [];
    const sample = answered.samples[answered.samples.length - 1];
    expect(table.rows.length).toBe(answered.samples.length);
    expect(last[0]).toBeCloseToRelative(answered.end.time / 60, 1e-12);
    expect(last[7]).toBeCloseToRelative(sample.windingTemperature - 273.15, 1e-12);
    expect(last.length).toBe(table.columns.length);
  });
});

describe("replyTo", () => {
  it("says in words why there is no run, with a cell whose curve stops short", () => {
    const { pack } = question.input;
    const cell = { ...pack.cell, curve: [[0.2, 3.6] as const, [1, 4.2] as const] };
    const reply = replyTo({ ...question, input: { ...question.input, pack: { ...pack, cell } } });
    expect(reply).toHaveProperty("problem", expect.stringMatching(/does not run from empty to full/));
  });
});

describe("the settings of Run-down, as they are read", () => {
  it.each([
    [START_CHARGE, "80", 0.8],
    [START_CHARGE, " 62,5 %", 0.625],
    [TARGET_MARGIN, "1.5×", 1.5],
    [DRIVE_CURRENT, "800 mA", 0.8],
    [SHARE, "40", 0.4],
  ] as const)("%o, typed as %j, are %s in SI", (spec, text, si) => {
    const reading = readNumber(spec, text);
    expect(isGood(reading) ? reading.value : reading.message).toBeCloseToRelative(si, 1e-12);
  });

  it.each([
    [START_CHARGE, "full", /allowed: 1\u202f% to 100\u202f%, for example "100 %"/],
    [START_CHARGE, "0", /Read "0"; allowed: 1\u202f%/],
    [START_CHARGE, "101", /Read "101"/],
    [TARGET_MARGIN, "0.9", /Read "0.9"; allowed: 1\u202f× to 20\u202f×/],
    [SHARE, "0", /more than 0, at most 100\u202f%/],
    [DRIVE_CURRENT, "-1 A", /0\u202fA to 1000\u202fA/],
  ] as const)("%o, typed as %j, are refused with what is allowed", (spec, text, message) => {
    expect(readNumber(spec, text)).toHaveProperty("message", expect.stringMatching(message));
  });
});
