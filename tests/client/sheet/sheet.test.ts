import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { uncertaintyState } from "#client/state/useUncertainty.ts";
import { foundIn } from "#client/state/verdict/found.ts";
import { headroomOf } from "#client/views/mass/headroom.ts";
import { answerTo } from "#client/views/rundown/answer.ts";
import { questionOf } from "#client/views/rundown/question.ts";
import { partRows } from "#client/views/sheet/partRows.ts";
import { recordOf } from "#client/views/sheet/record.ts";
import { daysText, testRows } from "#client/views/sheet/testRows.ts";
import type { Sheet } from "#client/views/sheet/useSheet.ts";
import { fitStacks } from "#shared/book/fitUp/fitStack.ts";
import { jointsUnder } from "#shared/book/jointsUnder.ts";
import { limitsInput } from "#shared/book/limitsInput.ts";
import { limitsOf } from "#shared/decide/limits/limits.ts";
import { skirtOver } from "#shared/physics/joints.ts";
import { predict } from "#shared/physics/predict.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const idle = { reply: null, asked: null, busy: false } as const;

function sheetOf(id: string): Sheet {
  const build = book.builds.find((each) => each.id === id);
  if (!build) throw new Error(`The demo has no ${id}.`);
  const outcome = solve(book, build.data);
  const question = questionOf(book, outcome, { startCharge: 1, targetMargin: build.data.targetMargin });
  const limited = question && limitsInput(book, outcome.build, question.input);
  const found = foundIn(book, outcome);
  const crossings = found && "answered" in found ? found.answered.findings.crossings : [];
  return {
    book,
    build,
    outcome,
    verdict: { verdict: null, crossings, ways: null, problem: null },
    sure: uncertaintyState(null, null, false),
    run: question && answerTo(question),
    limits: limited && limitsOf(limited),
    next: { ...idle, question: null },
    headroom: headroomOf(book, outcome.build),
    fits: fitStacks(book, outcome.build),
    problems: [],
    busy: false,
    settled: true,
  };
}

const MADE = { at: new Date("2026-05-01T10:00:00Z"), version: "9.9.9", demo: true, tried: {} };

describe("the tests of a sheet", () => {
  const dated = (...dates: string[]) =>
    dates.map((date) => ({ ...book.tests[0], data: { ...book.tests[0].data, date } }));

  it("on up to four days are named by day, each once and in order", () => {
    expect(daysText(dated("2026-03-09", "2026-03-01", "2026-03-09"))).toBe("2026-03-01, 2026-03-09");
  });

  it("on more days are named from the first to the last", () => {
    const days = ["2026-03-05", "2026-03-01", "2026-03-02", "2026-03-03", "2026-03-04"];
    expect(daysText(dated(...days))).toBe("2026-03-01 to 2026-03-05");
  });

  it("are all that the figures are based on, none twice", () => {
    const { outcome } = sheetOf("pane-crawler");
    const ids = outcome.resolved?.tests ?? [];
    const counted = testRows(book, ids).map(({ count }) => Number.parseInt(count, 10));
    expect(counted.reduce((sum, each) => sum + each, 0)).toBe(new Set(ids).size);
    expect(ids.length).toBeGreaterThan(3);
  });
});

describe("the parts of a sheet", () => {
  it("of the pane crawler carry the names of its records and the figures in use", () => {
    const { outcome } = sheetOf("pane-crawler");
    const rows = Object.fromEntries(partRows(book, outcome).map((row) => [row.what, row]));
    const { resolved } = outcome;
    expect(rows.Rotor.name).toBe(book.rotors.find(({ id }) => id === outcome.build.rotor)?.data.name);
    expect(rows.Rotor.figures[0]).toBe("44.0\u202fmm");
    expect(rows.Motor.figures[0]).toContain(`${Math.round(resolved?.motor?.constants.kv ?? 0)}\u202frpm/V`);
    expect(rows.Surface.figures[0]).toContain(resolved?.friction?.value.toFixed(2));
  });

  it("of a propeller's build without a skirt say that there is none", () => {
    const rows = partRows(book, sheetOf("prop-scout").outcome);
    expect(rows.find(({ what }) => what === "Skirt")).toMatchObject({ name: "none", figures: [] });
    expect(rows[0].what).toBe("Propeller");
  });
});

describe("a sheet as data", () => {
  it.each(book.builds.map(({ id }) => id))("of %s can be written as JSON and read back", (id) => {
    const record = recordOf(sheetOf(id), MADE);
    const read = JSON.parse(JSON.stringify(record));
    expect(read.program).toEqual({ name: "Gripcurve", version: "9.9.9" });
    expect(read.made).toBe("2026-05-01T10:00:00.000Z");
    expect(read.build).toMatchObject({ id, tried: {} });
    expect(read.cautions.length).toBeGreaterThan(0);
  });

  it("has the figures that the views show, in SI", () => {
    const sheet = sheetOf("pane-crawler");
    const record = recordOf(sheet, MADE);
    const { prediction } = sheet.outcome;
    expect(record.pull).toBe(prediction?.suction);
    const wall = record.attitudes.find(({ angle }) => angle === 90);
    expect(wall?.parked.margin).toBe(prediction?.attitudes.find(({ angle }) => angle === 90)?.parked.margin);
    expect(record.runDown?.end).toEqual(sheet.run?.end);
    expect(record.limits?.limits).toBe(sheet.limits?.limits);
    expect(record.mass.mass).toBe(sheet.headroom.mass);
  });

  it("holds the margins over each joint of the surface, as a prediction on the joint has them", () => {
    const sheet = sheetOf("roof-crawler");
    const { crossings } = recordOf(sheet, MADE);
    const surface = book.surfaces.find(({ id }) => id === sheet.build.data.surface)?.data;
    expect(crossings.map(({ joint }) => joint.depth)).toEqual(surface?.joints?.map(({ depth }) => depth));
    const [{ joint, way, worst }] = crossings;
    const input = sheet.outcome.resolved?.input ?? expect.fail("the roof crawler has no numbers");
    const under = jointsUnder(book, sheet.build.data) ?? expect.fail("no joints");
    const over = predict({ ...input, skirt: skirtOver(input.skirt, joint, way, under.span) });
    expect(worst.driving.margin).toBeCloseToRelative(over.worst.driving.margin ?? 0, 1e-9);
    expect(recordOf(sheetOf("prop-scout"), MADE).crossings).toEqual([]);
  });
});
