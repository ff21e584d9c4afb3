import { describe, expect, it } from "vitest";
import { toCsv } from "#client/ui/table.ts";
import { sureText } from "#client/ui/uncertaintyWords.ts";
import { shownOn, type WorkingOf } from "#client/ui/working/FigureOf.tsx";
import { askedBuilds, compareAddress } from "#client/views/compare/asked.ts";
import { comparedTable, compareSentence } from "#client/views/compare/compareWords.ts";
import { differs, differsFromFirst, lineText, type Piece, type Row } from "#client/views/compare/rows/row.ts";
import { comparedRows } from "#client/views/compare/rows/rows.ts";
import { partsPrice } from "#shared/book/partsPrice.ts";
import type { Board } from "#shared/physics/working.ts";
import { comparedColumn } from "#tests/support/comparedColumn.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const buildOf = (id: string) => {
  const build = book.builds.find((each) => each.id === id);
  if (!build) throw new Error(`The demo has no ${id}.`);
  return build.data;
};
const crawler = buildOf("pane-crawler");
const columns = [
  comparedColumn(book, crawler, 0),
  comparedColumn(book, { ...crawler, name: "Same" }, 1),
  comparedColumn(book, buildOf("prop-scout"), 2),
];
const groups = comparedRows(book, columns);
const rows = groups.flatMap((group) => group.rows);
const rowOf = (title: string): Row => {
  const found = rows.find((each) => each.title === title);
  if (!found) throw new Error(`No row ${title}.`);
  return found;
};
const spaced = (text: string) => text.replace(/\s/g, " ");
const linesOf = (title: string, at: number) => (rowOf(title).cells[at]?.also ?? []).map(lineText).join("; ");
const textsOf = (title: string) => rowOf(title).cells.map((cell) => spaced(cell?.text ?? ""));

/** The rows of a comparison work their boards out at once. */
const shownOf = (of: WorkingOf) => shownOn(of.board() as Board, of);

describe("Compare of a build, its copy and a propeller's", () => {
  it("differs in no row between a build and its copy, and marks against the first what the propeller changes", () => {
    for (const row of rows) expect(differsFromFirst(row, 1), row.title).toBe(false);
    expect(differs(rowOf("Rotor or propeller"))).toBe(true);
    expect(differsFromFirst(rowOf("Rotor or propeller"), 2)).toBe(true);
    expect(differs(rowOf("Air"))).toBe(false);
  });

  it("gives the propeller's thrust where the others have their pull, and no suction", () => {
    const [pull, same, thrust] = rowOf("Pull, or thrust of a propeller").cells.map((cell) => cell?.saved);
    const newton = columns.map(({ outcome }) => outcome.prediction?.suction ?? 0);
    // Grams by the standard gravity of the third CGPM (1901), 9.80665 m/s².
    expect(pull).toBeCloseToRelative((1000 * newton[0]) / 9.80665, 1e-12);
    expect(thrust).toBeCloseToRelative((1000 * newton[2]) / 9.80665, 1e-12);
    expect(same).toBe(pull);
    expect(textsOf("Suction")[2]).toBe("–");
  });

  it("says of one that burns no chance, and greys its minutes", () => {
    expect(rowOf("Verdict").cells[2]?.state).toBe("burns");
    expect(textsOf("Chance of holding")[2]).toBe("–");
    expect(rowOf("Charge lasts").cells[2]).toMatchObject({ tone: "void" });
    expect(linesOf("Wall 90°, parked", 2)).not.toMatch(/chance/);
    expect(linesOf("Wall 90°, parked", 0)).toMatch(/% chance, \d\.\d\d to \d\.\d\d/);
  });

  it("opens each margin, the pull, the minutes, the winding and the burst factor to its own build's working", () => {
    const shown = (title: string, at: number) => {
      const working = rowOf(title).cells[at]?.working;
      return (working && shownOf(working))?.working.result.value;
    };
    for (const title of ["Wall 90°, parked", "Ceiling 180°, driving", "Worst angle, parked", "Least margin"])
      columns.forEach(({ letter }, i) => {
        expect(shown(title, i), `${title} of ${letter}`).toBe(rowOf(title).cells[i]?.saved);
      });
    const pull = "Pull, or thrust of a propeller";
    expect(shown(pull, 2)).toBe(columns[2].outcome.prediction?.suction);
    const winding = Number(rowOf("Winding, once settled").cells[0]?.saved);
    expect(shown("Winding, once settled", 0)).toBeCloseTo(winding + 273.15, 9);
    const factor = Number(rowOf("Burst factor on speed").cells[0]?.saved);
    expect(shown("Burst factor on speed", 0)).toBeCloseToRelative(factor, 1e-9);
    const working = rowOf("Burst factor on speed").cells[0]?.working;
    const bursts = working && shownOf(working)?.working.values.find(({ symbol }) => symbol === "ω_burst");
    expect(bursts?.value).toBeCloseToRelative(columns[0].limits?.rotor.burstSpeed ?? 0, 1e-9);
    expect(shown("Charge lasts", 0)).toBe(columns[0].run?.end.time);
  });

  /** Every figure of the small lines under a row's figures, with its working. */
  const pieces = (title: string, at: number) =>
    (rowOf(title).cells[at]?.also ?? []).flatMap((line) =>
      typeof line === "string"
        ? []
        : line.filter((each): each is Exclude<Piece, string> => typeof each !== "string"),
    );

  it("opens each chance and each range of the samples to their working, of the build's own samples", () => {
    const [chance, range] = pieces("Wall 90°, parked", 0);
    const shown = [chance, range].map(({ working }) => shownOf(working)?.working);
    const spread = columns[0].sure.doubt?.attitudes.find(({ angle }) => angle === 90)?.parked;
    expect(shown.map((each) => each?.title)).toEqual([
      "chance of holding: the margin at 90°, parked",
      "5 to 95 % of the margin at 90°, parked",
    ]);
    expect(shown[0]?.result.value).toBe(spread?.holds);
    expect(shown[1]?.result.value).toBe(spread?.p5);
    expect(shown[1]?.upTo).toBe(spread?.p95);
    expect(chance.text).toBe(sureText(spread?.holds ?? 0));
    const whole = rowOf("Chance of holding").cells[0];
    expect(whole?.working && shownOf(whole.working)?.working.result.value).toBeCloseTo(
      Number(whole?.saved) / 100,
      12,
    );
    const [pull] = pieces("Pull, or thrust of a propeller", 0);
    expect(shownOf(pull.working)?.working.result.value).toBe(columns[0].sure.doubt?.suction.p5);
  });

  it("opens mass, headroom and the masses allowed to theirs, down to the ledger", () => {
    for (const [at, { headroom }] of columns.entries()) {
      const mass = rowOf("Mass").cells[at]?.working;
      expect(mass && shownOf(mass)?.working.result.value).toBe(headroom.mass);
      for (const { title, name, atTarget, atOne } of headroom.allowed) {
        const row = rows.find((each) => each.title.startsWith("Headroom") && each.title.includes(title));
        if (!row || atTarget === null || atOne === null) continue;
        const left = row.cells[at]?.working;
        expect(left && shownOf(left)?.working.result.value, name).toBe(atTarget - headroom.mass);
        const allowed = pieces(row.title, at).map(({ working }) => shownOf(working)?.working);
        expect(allowed.map((each) => each?.result.value)).toEqual([atTarget, atOne]);
        expect(allowed.every((each) => each?.title.startsWith(`mass allowed on ${name}`))).toBe(true);
      }
    }
    const sum = rowOf("Mass, suction").cells[0]?.working;
    expect(sum && shownOf(sum)?.working.title).toBe("sum of suction");
  });

  it("names who is best at what in one sentence, and who does not last", () => {
    const other = comparedColumn(book, buildOf("roof-crawler"), 1);
    const sentence = spaced(compareSentence([columns[0], other, columns[2]]));
    expect(sentence).toMatch(/^C burns\. A has the most margin where it is tightest, \d\.\d\d ×;/);
    expect(sentence).toMatch(/B runs longest, \d\.\d minutes\.$/);
    // Two that are alike in a figure are not told apart by it.
    expect(compareSentence(columns.slice(0, 2))).toBe("");
  });

  it("is saved with a line for each figure and its band, a column for each build", () => {
    const lines = toCsv(comparedTable(columns, groups)).trim().split("\r\n");
    expect(lines[0]).toBe(
      `Figure,"A: ${columns[0].name}",B: Same,"C: ${columns[2].name}"`.replace(/"C: ([^",]*)"$/, "C: $1"),
    );
    const margin = rowOf("Wall 90°, parked").cells[0]?.saved as number;
    const line = lines.find((each) => each.startsWith('"Wall 90°, parked, ×"')) ?? "";
    expect(line).toContain(`,${Number(margin.toPrecision(6))},`);
    expect(lines.some((each) => each.startsWith('"Wall 90°, parked: 5 %, ×"'))).toBe(true);
  });
});

describe("Compare of a build that lacks a test", () => {
  it("says what it lacks and leaves its figures open, beside one that has all", () => {
    const rotors = book.rotors.map((each) => ({ ...each, data: { ...each.data, geometry: undefined } }));
    const bare = { ...book, rotors, tests: [] };
    const lacking = comparedColumn(bare, crawler, 0);
    const [verdict] = comparedRows(bare, [lacking, columns[1]])[0].rows;
    expect(verdict.cells[0]?.text).toBe("not known yet");
    expect(verdict.cells[0]?.also?.length).toBeGreaterThan(0);
    expect(compareSentence([lacking, columns[1]])).toMatch(/^Of A not enough is known yet\./);
  });
});

describe("partsPrice", () => {
  const priced = (of: (name: string) => number | undefined) => ({
    ...book,
    motors: book.motors.map((each) => ({ ...each, data: { ...each.data, price: of("motor") } })),
    packs: book.packs.map((each) => ({ ...each, data: { ...each.data, price: of("pack") } })),
    skirts: book.skirts.map((each) => ({ ...each, data: { ...each.data, price: of("skirt") } })),
    rotors: book.rotors.map((each) => ({
      ...each,
      data: { ...each.data, sizes: each.data.sizes.map((size) => ({ ...size, price: of("rotor") })) },
    })),
  });

  it("adds motor, rotor, pack and skirt, by hand: 14 + 3.5 + 11 + 2; a build without a skirt pays for none", () => {
    const prices: Record<string, number> = { motor: 14, rotor: 3.5, pack: 11, skirt: 2 };
    const all = priced((part) => prices[part]);
    expect(partsPrice(all, crawler)).toEqual({ price: 30.5, missing: [] });
    expect(partsPrice(all, { ...crawler, skirt: null }).price).toBe(28.5);
  });

  it("is not known, and the part named, where one has no price", () => {
    const { price, missing } = partsPrice(
      priced((part) => (part === "pack" ? undefined : 1)),
      crawler,
    );
    expect(price).toBeNull();
    expect(missing).toEqual([book.packs.find(({ id }) => id === crawler.pack)?.data.name]);
  });
});

describe("the address of Compare", () => {
  const asked = (query: string, last: string | null = null) =>
    askedBuilds(new URLSearchParams(query), book, last);

  it("names up to six builds, each once, in their order", () => {
    expect(compareAddress(["a", "b", "a"])).toBe("/compare?builds=a%2Cb");
    expect(asked("builds=roof-crawler,pane-crawler,roof-crawler").ids).toEqual([
      "roof-crawler",
      "pane-crawler",
    ]);
  });

  it("without any gives the build looked at last and the book's next one", () => {
    expect(asked("", "roof-crawler").ids).toEqual(["roof-crawler", "pane-crawler"]);
  });

  it("names what the book does not have, and counts what is beyond the most", () => {
    expect(asked("builds=pane-crawler,gone")).toMatchObject({ ids: ["pane-crawler"], unknown: ["gone"] });
    const many = {
      ...book,
      builds: Array.from({ length: 8 }, (_, i) => ({ ...book.builds[0], id: `b${i}` })),
    };
    const all = many.builds.map(({ id }) => id).join(",");
    expect(askedBuilds(new URLSearchParams({ builds: all }), many, null)).toMatchObject({ tooMany: 2 });
  });
});
