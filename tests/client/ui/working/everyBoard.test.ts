import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { answerTo as cutOf } from "#client/views/attitudes/power/answer.ts";
import { questionOf as cutQuestion, inertiaOf } from "#client/views/attitudes/power/question.ts";
import { calibrationPage, pairsWith } from "#client/views/curves/calibration/calibrationData.ts";
import {
  calibrationBoard,
  frictionFitBoard,
  leakFitBoard,
  motorFitBoard,
  rotorFitBoard,
} from "#client/views/curves/fitWorkings.ts";
import { frictionGroups } from "#client/views/curves/friction/frictionData.ts";
import { gearPage } from "#client/views/curves/gear/gearData.ts";
import { gearFitBoard } from "#client/views/curves/gear/gearWorkings.ts";
import { leakPage } from "#client/views/curves/leak/leakData.ts";
import { motorPage } from "#client/views/curves/motor/motorData.ts";
import { propellerPage } from "#client/views/curves/propeller/propellerData.ts";
import { propellerFitBoard } from "#client/views/curves/propeller/propellerWorkings.ts";
import { recordBoard } from "#client/views/curves/record/recordWorkings.ts";
import { rotorFamily } from "#client/views/curves/rotor/family.ts";
import { headroomBoard, headroomOf } from "#client/views/mass/headroom.ts";
import { answerTo as runOf } from "#client/views/rundown/answer.ts";
import { questionOf as runQuestion } from "#client/views/rundown/question.ts";
import { alarmFor } from "#client/views/rundown/rundownWords.ts";
import { ALARM_TITLE, END_TITLE, fallTitle, runBoard } from "#client/views/rundown/runWorkings.ts";
import { bestOf, replyTo } from "#client/views/size/answer.ts";
import { askedFrom } from "#client/views/size/asked.ts";
import { questionOf as sizeQuestion } from "#client/views/size/question.ts";
import { settingsOf } from "#client/views/size/settings.ts";
import { bestBoard } from "#client/views/size/workings.ts";
import { fitStacks } from "#shared/book/fitUp/fitStack.ts";
import { stackBoard } from "#shared/book/fitUp/workings.ts";
import { balanceBoard, massBoard } from "#shared/book/mass/workings.ts";
import { chancesOf } from "#shared/decide/fitUp/chance.ts";
import { fallingEnergy } from "#shared/physics/limits/energy.ts";
import { fallWorkings, powerCutWorkings } from "#shared/physics/powerCutWorkings.ts";
import { type Board, originBehind } from "#shared/physics/working.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { expectWhole } from "./expectWhole.ts";

const book = demoBook();
const build = (id: string) => {
  const found = book.builds.find((each) => each.id === id)?.data;
  if (!found) throw new Error(`The demo has no ${id}.`);
  return found;
};
const pane = build("pane-crawler");
const outcome = solve(book, pane);
const valueIn = ({ workings }: Pick<Board, "workings">, title: string) =>
  workings.find((each) => each.title === title)?.result.value;
const titled = ({ workings }: Board, title: string) => workings.find((each) => each.title === title);

describe("workings of a run-down", () => {
  const question = runQuestion(book, outcome, { startCharge: 1, targetMargin: pane.targetMargin });
  if (!question) throw new Error("The build has no run.");
  const run = runOf(question);
  const board = runBoard(run);

  it("of every attitude that is lost: the minutes that the table shows, and the alarm that is set there", () => {
    expectWhole(board);
    for (const { name, holds, target } of [...run.tracks]) {
      expect(valueIn(board, fallTitle(name, 1)) ?? null).toBe(holds.time);
      expect(valueIn(board, fallTitle(name, run.targetMargin)) ?? null).toBe(target.time);
    }
    expect(valueIn(board, END_TITLE)).toBe(run.end.time);
    expect(valueIn(board, ALARM_TITLE)).toBe(alarmFor(run, "holds")?.cell);
  });

  it("of the end: the charge drawn over the mean current is the time", () => {
    const end = titled(board, END_TITLE);
    const of = (symbol: string) => end?.values.find((each) => each.symbol === symbol)?.value ?? Number.NaN;
    const time = ((of("z₀") - of("z")) * of("N_p") * of("C")) / of("I_mean");
    expect(time).toBeCloseToRelative(run.end.time, 1e-9);
  });
});

describe("workings of a power cut", () => {
  it("are the times and the fall that the caution tells", () => {
    const question = cutQuestion(inertiaOf(book, outcome), outcome);
    if (!question || !outcome.prediction) return expect.fail("no power cut");
    const cut = cutOf(question);
    const workings = powerCutWorkings(question.input, outcome.prediction, cut);
    expectWhole({ workings });
    for (const { name, after } of cut.held)
      expect(valueIn({ workings }, `time until it lets go of ${name}`)).toBe(after);
    expect(valueIn({ workings }, "time from switching on until it holds") ?? null).toBe(cut.toHold);
    const fall = fallWorkings(0.2, 2.5);
    expect(valueIn({ workings: fall }, "energy at the ground")).toBe(fallingEnergy(0.2, 2.5));
  });
});

describe("workings of Mass", () => {
  it("are the masses that are allowed and what is left of them", () => {
    const shown = headroomOf(book, pane);
    const board = headroomBoard(book, pane, shown);
    expectWhole(board);
    expectWhole(massBoard(book, pane));
    const placed = { ...pane, places: { motor: { fromRear: 0.05, height: 0.02 } } };
    expectWhole(balanceBoard(book, placed));
    const limited = shown.allowed.filter(({ atTarget }) => atTarget !== null);
    expect(limited.length).toBeGreaterThan(0);
    for (const { name, atTarget } of limited) {
      const of = `on ${name} at ${pane.targetMargin} ×`;
      expect(valueIn(board, `mass allowed ${of}`)).toBe(atTarget);
      expect(valueIn(board, `mass left ${of}`)).toBe((atTarget ?? 0) - shown.mass);
    }
  });
});

describe("workings of Fit-up", () => {
  it("of every stack of the demo: both ends of each range, and both chances", () => {
    const fits = book.builds.flatMap(({ data }) => fitStacks(book, data)).filter(({ stack }) => stack);
    expect(fits.length).toBeGreaterThan(2);
    for (const fit of fits) {
      const board = stackBoard(fit);
      expectWhole(board);
      const { name, stack, lines } = fit;
      const range = (title: string) => [valueIn(board, title), titled(board, title)?.upTo];
      expect(valueIn(board, `left in ${name}`)).toBe(stack?.clearance);
      expect(range(`worst case of ${name}`)).toEqual(stack?.worstCase);
      expect(range(`root-sum-square of ${name}`)).toEqual(stack?.rss);
      const { normal, uniform } = chancesOf(lines.map((line) => ({ ...line, nominal: line.nominal ?? 0 })));
      expect(valueIn(board, `chance that ${name} closes`)).toBe(normal);
      expect(valueIn(board, `chance that ${name} closes, errors spread evenly`)).toBe(uniform);
    }
  });
});

describe("workings of Size", () => {
  it("of the best size of each family: the figures of its row", () => {
    const asked = askedFrom(new URLSearchParams("from=40 mm&to=60 mm"));
    const put = sizeQuestion(book, settingsOf(book, pane, asked));
    const reply = put && replyTo(put.question);
    if (!put || !reply || "problem" in reply) return expect.fail("no sizes");
    const sized = reply.answered.families.filter((family) => bestOf(family));
    expect(sized.length).toBeGreaterThan(0);
    for (const family of sized) {
      const board = bestBoard(put, reply.answered, family);
      const row = bestOf(family);
      expectWhole(board);
      expect(valueIn(board, "winding that is wanted")).toBe(row?.kv);
      expect(valueIn(board, "pull that is wanted")).toBe(reply.answered.pull);
      expect(valueIn(board, "power from the pack")).toBeCloseToRelative(row?.packPower ?? Number.NaN, 1e-9);
      expect(valueIn(board, "speed")).toBeCloseToRelative(row?.speed ?? Number.NaN, 1e-9);
      expect(valueIn(board, "burst speed over its own") ?? null).toBe(row?.burstFactor);
      expect(valueIn(board, "settled temperature of the winding") ?? null).toBe(row?.windingTemperature);
      expect(valueIn(board, "time that it does so") ?? null).toBe(row?.holdTime);
    }
  });
});

describe("workings of Curves", () => {
  const testsBehind = (board: Board) => {
    const count = board.workings[0]?.values.find(({ symbol }) => symbol === "n");
    return count ? (originBehind(count, board.origins)?.tests ?? []) : [];
  };
  const kindsOf = (board: Board) => [
    ...new Set(book.tests.filter(({ id }) => testsBehind(board).includes(id)).map(({ data }) => data.kind)),
  ];

  it("of a rotor: the curve's coefficients, down to its curve tests", () => {
    const family = rotorFamily(book, pane.rotor);
    const board = family ? rotorFitBoard(family) : expect.fail("no rotor");
    expectWhole(board);
    expect(board.workings.slice(0, family?.fit?.psi.length).map(({ result }) => result.value)).toEqual(
      family?.fit?.psi,
    );
    expect(valueIn(board, "φ with no pressure")).toBe(family?.phiFree);
    expect(kindsOf(board)).toEqual(["curve"]);
  });

  it("of a motor: its constants, down to its motor tests", () => {
    const page = motorPage(book, pane.motor);
    const board = page ? motorFitBoard(page) : expect.fail("no motor");
    expectWhole(board);
    expect(valueIn(board, "speed constant")).toBe(page?.basis.fit?.kv);
    expect(valueIn(board, "resistance")).toBe(page?.basis.fit?.resistance);
    expect(kindsOf(board)).toEqual(["motor"]);
  });

  it("of a leak and a friction: the law and μ, down to their tests", () => {
    const groups = book.skirts.flatMap(({ id }) => leakPage(book, "skirt", id).groups);
    const fitted = groups.filter(({ fit }) => fit);
    expect(fitted.length).toBeGreaterThan(0);
    for (const group of fitted) {
      const board = leakFitBoard(group);
      expectWhole(board);
      expect(valueIn(board, "coefficient of the leak")).toBe(group.fit?.coefficient);
      expect(valueIn(board, "exponent of the leak")).toBe(group.fit?.exponent);
      expect(kindsOf(board)).toEqual(["leak"]);
    }
    const slides = frictionGroups(book, pane.surface).filter(({ fit }) => fit);
    expect(slides.length).toBeGreaterThan(0);
    for (const group of slides) {
      expectWhole(frictionFitBoard(group));
      expect(valueIn(frictionFitBoard(group), "friction by the tilt board")).toBe(group.fit?.mu);
    }
  });

  it("of every running gear that was tested: its stiffness and the lip's height, from all readings in use", () => {
    const pages = book.gears.flatMap(({ id }) => gearPage(book, id) ?? []).filter(({ tested }) => tested.fit);
    expect(pages.length).toBeGreaterThan(0);
    for (const page of pages) {
      const board = gearFitBoard(page);
      expectWhole(board);
      expect(valueIn(board, "stiffness of the running gear")).toBe(page.tested.fit?.stiffness);
      expect(valueIn(board, "height of the lip without load")).toBe(page.tested.fit?.heights[0]);
      expect(board.origins[0].value).toBe(
        page.points.filter(({ aside, height }) => aside === null && height > 0).length,
      );
    }
  });

  it("of every propeller that was tested: its coefficients, and the drifts that were kept", () => {
    const pages = book.rotors
      .filter(({ data }) => data.kind === "propeller")
      .flatMap(({ id }) => propellerPage(book, id) ?? [])
      .filter(({ fit }) => fit);
    expect(pages.length).toBeGreaterThan(0);
    for (const page of pages) {
      const board = propellerFitBoard(page);
      expectWhole(board);
      expect(valueIn(board, "thrust coefficient")).toBe(page.fit?.thrust[0]);
      expect(valueIn(board, "power coefficient")).toBe(page.fit?.power?.[0]);
      expect(valueIn(board, "drift of the thrust coefficient") ?? 0).toBe(page.fit?.thrust[1]);
    }
  });

  it("of a calibration: gap, pull factor and friction as its page shows them", () => {
    const [pair] = pairsWith(book, "skirt", pane.skirt ?? "");
    const page = pair && calibrationPage(book, pair);
    if (!page) return expect.fail("no calibration");
    const board = calibrationBoard(page);
    expectWhole(board);
    expect(valueIn(board, "gap calibrated")).toBe(page.answer.gap.mean);
    expect(valueIn(board, "pull factor calibrated")).toBe(page.answer.pullFactor?.mean);
    expect(valueIn(board, "friction calibrated")).toBe(page.answer.friction?.mean);
  });

  it("of the record: its shares, down to the tests", () => {
    const line = { inTime: 4, drift: null, said: null, held: null };
    const board = recordBoard({
      entries: [],
      missing: 0,
      owed: 0,
      summary: [
        { ...line, figure: "pull", count: 8, inside: 0.875, bias: -0.02 },
        { ...line, figure: "leak", count: 4, inside: 1, bias: null },
      ],
    });
    expectWhole(board);
    expect(valueIn(board, "pulls within 5 to 95 %")).toBe(0.875);
    expect(valueIn(board, "readings within 5 to 95 %")).toBe(11 / 12);
    expect(valueIn(board, "pulls off in the median")).toBe(-0.02);
  });
});
