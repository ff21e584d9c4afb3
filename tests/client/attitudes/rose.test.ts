import { describe, expect, it } from "vitest";
import { type Outcome, solve } from "#client/state/outcome.ts";
import { replyTo } from "#client/state/uncertainty/answer.ts";
import { toCsv } from "#client/ui/table.ts";
import {
  bandText,
  beyondRim,
  degrees,
  figures,
  grams,
  madeText,
  roseSentence,
} from "#client/views/attitudes/attitudeWords.ts";
import { type Rose, roseOf } from "#client/views/attitudes/rose.ts";
import { roseTable } from "#client/views/attitudes/table.ts";
import { uncertaintyAsked } from "#shared/book/uncertaintyAsked.ts";
import { deviationOf } from "#shared/decide/spread.ts";
import { inUnit } from "#shared/units/format.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const build = book.builds[0].data;

function rose(change: (outcome: Outcome) => Outcome = (outcome) => outcome): Rose {
  const found = roseOf(change(solve(book, build)));
  if (!found) throw new Error("The demo's first build has no numbers.");
  return found;
}

const heavy = (mass: number) => () => solve(book, { ...build, vehicle: { ...build.vehicle, mass } });

describe("roseOf", () => {
  it("has its greatest need, of all whole degrees, next to the worst angle and no greater", () => {
    const { stands, worst } = rose();
    for (const state of ["parked", "driving"] as const) {
      const most = stands.reduce((a, b) => (b[state].pull > a[state].pull ? b : a));
      expect(Math.abs(most.angle - worst[state].angle)).toBeLessThanOrEqual(1);
      expect(most[state].pull).toBeLessThanOrEqual(worst[state][state].pull * (1 + 1e-12));
    }
  });

  it("spreads the pull made, with its samples: between their 5 and 95 %, each attitude with its own", () => {
    const outcome = solve(book, build);
    const question = uncertaintyAsked(book, outcome);
    const reply = question && replyTo(question);
    if (!reply || !("answered" in reply)) throw new Error("The demo states uncertainties.");
    const drawn = roseOf(outcome, reply.answered);
    if (!drawn?.spread) throw new Error("There is a spread.");
    expect(drawn.spread).toEqual({ less: reply.answered.suction.p5, more: reply.answered.suction.p95 });
    expect(drawn.spread.less).toBeLessThan(drawn.made);
    expect(drawn.spread.more).toBeGreaterThan(drawn.made);
    expect(madeText(drawn)).toContain(grams(drawn.spread.less));
    for (const { stand, sure } of drawn.named) {
      expect(sure?.angle).toBe(stand.angle);
      expect((stand.parked.margin ?? 1) >= 1).toBe((sure?.parked.holds ?? 0) > 0.5);
    }
  });

  it("states no spread, before the samples are there, and none in words", () => {
    const bare = rose();
    expect(bare.spread).toBeNull();
    expect(madeText(bare)).toBe(`It makes ${grams(bare.made)}.`);
    expect(bandText(bare)).toBe("");
  });

  it("answers for floor, wall, ceiling, the build's own and the worst, in that order", () => {
    const kinds = rose().named.map((each) => each.kind);
    expect(kinds.slice(0, 3)).toEqual(["standard", "standard", "standard"]);
    expect(kinds.filter((kind) => kind === "own")).toHaveLength(build.attitudes.length);
    expect(kinds.at(-1)).toBe("worst");
  });

  it("is nothing, with a motor that the book does not have", () => {
    expect(roseOf(solve(book, { ...build, motor: "no-such-motor" }))).toBeNull();
  });
});

describe("words", () => {
  it("says where driving is hardest, what that takes and what is made", () => {
    const found = rose();
    const { angle, driving } = found.worst.driving;
    const said = figures(found);
    expect(said).toContain(`hardest at ${Math.round(angle)}°: ${grams(driving.pull)}`);
    expect(said).toContain(madeText(found));
  });

  it("names what the rim hides, with a mass too large", () => {
    const found = rose(heavy(3));
    expect(beyondRim(found)).toMatch(/^Between \d+° and \d+° driving needs more than the rim shows/);
  });

  it("says that no pull suffices, without any friction, and shows no figure for it", () => {
    const found = rose(() => solve(book, { ...build, overrides: { wheelFriction: 0 } }));
    expect(roseSentence(found)).toContain("no pull suffices");
    expect(roseSentence(found)).not.toMatch(/NaN|Infinity|undefined/);
  });

  it.each([
    [128, "128°"],
    [153.5, "153.5°"],
    [0, "0°"],
    [179.96, "180°"],
  ])("writes %s, as degrees, as %s", (angle, text) => {
    expect(degrees(angle)).toBe(text);
  });
});

describe("roseTable", () => {
  it("has a row for each named attitude and each fifth degree, with as many cells as columns, all finite", () => {
    const found = rose();
    const { columns, rows } = roseTable(found);
    expect(rows).toHaveLength(found.named.length + 37);
    for (const row of rows) {
      expect(row).toHaveLength(columns.length);
      for (const cell of row) if (typeof cell === "number") expect(Number.isFinite(cell)).toBe(true);
    }
  });

  it("has the pull made and sampled margins with the digits that their samples leave, in the file as well", () => {
    const outcome = solve(book, build);
    const asked = uncertaintyAsked(book, outcome);
    const reply = asked && replyTo({ ...asked, asked: { ...asked.asked, samples: 256 } });
    if (!reply || !("answered" in reply)) return expect.fail("nothing is sampled");
    const { answered } = reply;
    const found = roseOf(outcome, answered) ?? expect.fail("the demo's first build has no numbers");
    const table = roseTable(found);
    const [, wall] = toCsv(table)
      .split("\r\n")
      .filter((line) => /^(attitude|Wall)/.test(line));
    const cell = (column: string) => (wall ?? "").split(",")[table.columns.indexOf(column)];
    // Some ± 35 g, ± 0.07: units and hundredths are the last of two digits.
    expect(cell("made, g")).toMatch(/^\d{4}$/);
    expect(cell("margin parked")).toMatch(/^\d\.\d{1,2}$/);
    const at = (row: number) => table.rows[row]?.[table.columns.indexOf("made, g")];
    expect(at(0)).toMatchObject({ uncertainty: deviationOf(answered.suction) * inUnit(1, "load") });
  });
});
