import { describe, expect, it } from "vitest";
import { blockOf, pasteBlock, type Target } from "#client/views/bench/forms/pasteBlock.ts";
import type { Draft } from "#client/views/bench/record/draft.ts";
import { columnsOf, KINDS } from "#client/views/bench/record/kinds.ts";
import { readDraft } from "#client/views/bench/record/readDraft.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";
import { MOTOR, PLATE_CURVE, PULL } from "./examples.ts";

/** What the columns say once a text was pasted into the first cell of a row. */
function pasted(test: BenchTest, text: string, row = 0, column = 0) {
  const draft = writeDraft(test);
  const spec = KINDS[test.kind];
  const block = blockOf(text);
  if (!block) throw new Error("It is a single cell.");
  const holes = draft.holes.map((_, hole): Target => ({ hole }));
  const all: Target[] = [...columnsOf(spec, draft.fields), ...(spec.plate ? holes : [])];
  const done = pasteBlock(spec, draft, block, { row, column }, all, all);
  const said = (key: string) => done.draft.rows.map(({ cells }) => cells[key]);
  return { ...done, said };
}

const errorsOf = (draft: Draft) => [...readDraft(draft).errors.values()];

describe("blockOf", () => {
  it("of a single cell, with or without the newline that a spreadsheet adds: is none, and pasted as text", () => {
    expect(blockOf("410")).toBeNull();
    expect(blockOf("410 g\r\n")).toBeNull();
  });

  it("of cells with quotes, tabs and newlines in them: keeps each cell whole", () => {
    expect(blockOf('1\t"a ""b""\tc"\r\n2\t"d\ne"\n')).toEqual([
      ["1", 'a "b"\tc'],
      ["2", "d\ne"],
    ]);
  });
});

describe("pasteBlock, a block of numbers", () => {
  it("fills from its cell on, adds the rows it needs, gives bare numbers the column's unit", () => {
    const { said, draft, words } = pasted(PULL, "300\t320\n310 g\t3,3 N\n305\t", 1);
    expect(said("held")).toEqual(["410 g", "300 g", "310 g", "305 g"]);
    expect(said("letGo")).toEqual(["430 g", "320 g", "3,3 N", ""]);
    expect(draft.rows.map(({ key }) => key)).toEqual([...new Set(draft.rows.map(({ key }) => key))]);
    expect(words).toBe("3 rows pasted.");
  });

  it("wider than the table: says which columns were left out", () => {
    const { words, said } = pasted(PULL, "300\t320\t7.4\t0.3 mm\t5\n310\t330\t7.3\t0.3 mm\t6");
    expect(words).toBe("2 rows pasted. Left out, without a place in the table: column 5.");
    expect(said("gap")).toEqual(["0.3 mm", "0.3 mm"]);
  });

  it("longer than a test takes: fills what it takes and counts the rest", () => {
    const { words, draft } = pasted(PULL, Array.from({ length: 1010 }, () => "300\t320").join("\n"), 1);
    expect(draft.rows).toHaveLength(1000);
    expect(words).toContain("1000 rows at most; the last 11 were left out");
  });

  it("with text in it: is kept as it is and refused by the field", () => {
    const { said, draft } = pasted(PULL, "300\t320\nabout 3\t330");
    expect(said("held")).toEqual(["300 g", "about 3"]);
    expect(errorsOf(draft).join()).toContain("about 3");
  });
});

describe("pasteBlock, a block with a heading", () => {
  it("that names columns: they go where the names say, in the heading's units, whatever the order", () => {
    const { said, words } = pasted(PULL, "Let go [kg]\tRemark\tHeld (kg)\n0.43\tcalm\t0.41\n0.45\t\t0.42");
    expect(said("held")).toEqual(["0.41 kg", "0.42 kg"]);
    expect(said("letGo")).toEqual(["0.43 kg", "0.45 kg"]);
    expect(words).toBe("2 rows pasted. Left out, without a place in the table: Remark.");
  });

  it("with a unit that the quantity doesn't have: every cell of that column is refused, none is taken for another unit", () => {
    const { said, draft } = pasted(PULL, "held [stone]\tlet go [g]\n1\t7000\n2\t14000");
    expect(said("held")).toEqual(["1 stone", "2 stone"]);
    expect(errorsOf(draft).filter((message) => message.includes("stone"))).toHaveLength(2);
  });

  it("that names nothing of the test: is left out, the columns go by their order", () => {
    const { said } = pasted(PULL, "first\tsecond\n300\t320");
    expect([said("held")[0], said("letGo")[0]]).toEqual(["300 g", "320 g"]);
  });
});

describe("pasteBlock, columns that hold no quantity", () => {
  it("a check is ticked by yes, cleared by no, and what is neither is said", () => {
    const columns = KINDS.motor.columns.map(({ key }) => key);
    const heading = ["voltage", "current", "speed", "no load"].join("\t");
    expect(columns).toContain("noLoad");
    const { said, words } = pasted(
      MOTOR,
      `${heading}\n7.4\t0.3\t9000\tyes\n7.4\t3\t7000\tno\n7\t2\t7000\tmaybe`,
    );
    expect(said("noLoad").slice(0, 3)).toEqual(["yes", "", ""]);
    expect(words).toContain("Neither yes nor no, not ticked: maybe.");
  });

  it("open holes follow the columns, kind by kind", () => {
    const at = columnsOf(KINDS.curve, writeDraft(PLATE_CURVE).fields).length;
    const { draft } = pasted(PLATE_CURVE, Array.from({ length: 2 }, (_, i) => `${i + 1}`).join("\n"), 0, at);
    expect(draft.rows.slice(0, 2).map(({ open }) => open[0])).toEqual(["1", "2"]);
  });
});
