import { describe, expect, it } from "vitest";
import { answerTo } from "#client/views/rundown/answer.ts";
import { cycleFrom, cycleText, triedFrom, withTried } from "#client/views/rundown/asked.ts";
import { readRows, rowsOf, withRow } from "#client/views/rundown/cycleDraft.ts";
import { alarmFor, cellVoltageAt, rundownSentence } from "#client/views/rundown/rundownWords.ts";
import { question } from "./examples.ts";

const NOTHING_TRIED = { startCharge: null, targetMargin: null, cycle: null, keep: null };
const CYCLE = [
  { angle: 90, share: 0.6, driveCurrent: 1.2, moving: true },
  { angle: 153.5, share: 0.4, driveCurrent: 0, moving: false },
];

describe("the address of Run-down", () => {
  it("brings start charge, wanted margin and cycle back, and leaves the rest of it alone", () => {
    const keep = { kind: "margin", margin: 1.4, angle: 153 } as const;
    const tried = { startCharge: 0.62, targetMargin: 1.8, cycle: CYCLE, keep };
    const query = withTried(new URLSearchParams("gap=0.0004"), tried);
    expect(query.get("gap")).toBe("0.0004");
    expect(query.get("cycle")).toBe("90:60:1.2,153.5:40:parked");
    expect(triedFrom(query)).toEqual(tried);
    expect(withTried(query, NOTHING_TRIED).toString()).toBe("gap=0.0004");
  });

  it("says a steady load in the place of the build's cycle", () => {
    expect(cycleText([])).toBe("steady");
    expect(cycleFrom("steady")).toEqual([]);
    expect(cycleFrom(null)).toBeNull();
  });

  it.each(["90:60", "wall:60:1", "190:60:1", "90:0:1", "90:60:-1", "90:60:1,x"])(
    "leaves “%s” out",
    (text) => {
      expect(cycleFrom(text)).toBeNull();
    },
  );

  it("leaves a charge or a margin out that can't be", () => {
    expect(triedFrom(new URLSearchParams("start=140&wanted=0.2"))).toEqual(NOTHING_TRIED);
  });
});

describe("a drive cycle as typed", () => {
  it("reads back as it was written, and a new part takes what is left of the time", () => {
    expect(readRows(rowsOf(CYCLE)).cycle).toEqual(CYCLE);
    expect(withRow(rowsOf([CYCLE[0]]), 180)[1]).toMatchObject({ angle: "180", share: "40" });
  });

  it("of shares that are not the whole: says their sum", () => {
    const { cycle, whole } = readRows(rowsOf([CYCLE[0]]));
    expect(cycle).toBeNull();
    expect(whole).toBe("The shares add up to 60.0\u202f%; they must add up to 100\u202f%.");
  });

  it("of a share or a current that is no number: says so at the field", () => {
    const [row] = rowsOf(CYCLE);
    const { problems } = readRows([{ ...row, share: "half", current: "" }]);
    expect([...problems.keys()]).toEqual(["0.share", "0.current"]);
    expect(problems.get("0.share")).toMatch(/Read "half"/);
  });

  it("of no parts at all: is a steady load", () => {
    expect(readRows([])).toMatchObject({ cycle: [], whole: null });
  });
});

describe("the answer through a drive cycle", () => {
  const cycle = [
    { angle: 90, share: 0.6, driveCurrent: 2.5 },
    { angle: 180, share: 0.4, driveCurrent: 0, moving: false },
  ];
  const answered = answerTo({ ...question, input: { ...question.input, cycle } });
  const steady = answerTo(question);
  const at = (key: string) => answered.tracks.find((track) => track.key === key);

  it("says so, ends sooner, and judges each attitude under its own part", () => {
    expect(rundownSentence(answered)).toMatch(/^On its drive cycle (it|the) /);
    expect(answered.end.time).toBeLessThan(steady.end.time);
    expect(at("at 90")?.judged).toEqual({ driveCurrent: 2.5, parked: false });
    expect(at("at 180")?.judged).toEqual({ driveCurrent: 0, parked: true });
    expect(at("at 90")?.margins[0] ?? 9).toBeLessThan(steady.tracks[1].margins[0] ?? 0);
    expect(at("at 180")?.margins[0] ?? 0).toBeGreaterThanOrEqual(steady.tracks[0].margins[0] ?? 9);
  });

  it("sets the alarm to the cell's voltage under the load at which the first attitude goes", () => {
    const alarm = alarmFor(answered, "holds");
    const lost = answered.tracks.find((track) => track.key === alarm?.lost?.key);
    expect(alarm?.cell).toBe(Math.ceil((lost?.holds.cellVoltage ?? 0) * 100 - 1e-9) / 100);
  });

  it("reads the end's cell voltage under the heaviest load: the cell's minimum", () => {
    expect(cellVoltageAt(answered.samples, answered.end.time)).toBeCloseToRelative(3, 1e-9);
  });
});
