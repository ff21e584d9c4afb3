import { describe, expect, it } from "vitest";
import {
  type Draft,
  withCell,
  withField,
  withHole,
  withNewHole,
  withNewRow,
  withoutHole,
  withRow,
} from "#client/views/bench/record/draft.ts";
import { KINDS } from "#client/views/bench/record/kinds.ts";
import { carriedOf, readDraft } from "#client/views/bench/record/readDraft.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import { benchTest } from "#shared/model/tests/index.ts";
import { EXAMPLES, FRICTION, PLATE_CURVE, PULL, RIDE_HEIGHT } from "./examples.ts";

const messages = (draft: Draft) => Object.fromEntries(readDraft(draft).errors);

describe("writeDraft and readDraft, one after the other", () => {
  it.each(EXAMPLES.map((test) => [test.kind, test] as const))(
    "give a stored %s test back as it was, its units as typed",
    (_kind, test) => {
      const { data, errors } = readDraft(writeDraft(test));
      expect([...errors]).toEqual([]);
      expect(benchTest.parse(data)).toEqual(test);
    },
  );

  it("keep a struck out test struck out; without its reason it counts again", () => {
    const draft = writeDraft({ ...PULL, struckOut: "shim forgotten" });
    expect(benchTest.parse(readDraft(draft).data).struckOut).toBe("shim forgotten");
    expect(readDraft(withField(draft, "struckOut", " ")).data).not.toHaveProperty("struckOut");
  });
});

describe("readDraft, what is wrong said by the field's path", () => {
  it("names a missing field, an unknown unit, a number that is none and a missing date", () => {
    let draft = withField(writeDraft(PULL), "diameter", "");
    draft = withField(draft, "rigMass", "5 foo");
    draft = withField(draft, "date", "yesterday");
    draft = withField(draft, "instruments.load.percent", "many");
    draft = withCell(draft, 1, "held", "abc");
    const said = messages(draft);
    expect(said.diameter).toMatch(/Rotor diameter is needed, for example "38 mm"/);
    expect(said.rigMass).toMatch(/"foo" is no unit.*allowed: g.*for example "138 g"/);
    expect(said.date).toMatch(/2026-03-14/);
    expect(said["instruments.load.percent"]).toMatch(/allowed: 0 to 100/);
    expect(said["rows.1.held"]).toMatch(/no number/);
  });

  it("leaves a row that can't be read out of the data and says which rows are in it", () => {
    const { data, rowKeys } = readDraft(withCell(writeDraft(PULL), 0, "held", "abc"));
    expect(rowKeys).toEqual([1]);
    expect(data.rows).toHaveLength(1);
  });

  it("asks for the two other readings of the air where one was typed", () => {
    const draft = withField(writeDraft(PULL), "air.temperature", "18 °C");
    expect(Object.keys(messages(draft))).toEqual(["air.pressure", "air.humidity"]);
  });

  it("asks for a reason where a row is set aside without one", () => {
    const draft = withRow(writeDraft(PULL), 0, (row) => ({ ...row, aside: " " }));
    expect(messages(draft)).toEqual({ "rows.0.setAside": "Say why the row is set aside." });
  });

  it("leaves out rows in which nothing was typed, and asks for one row at least", () => {
    const draft = withNewRow(writeDraft(PULL), carriedOf(KINDS.pull));
    expect(draft.rows.at(-1)?.cells).toEqual({ gap: "0.5 mm" });
    expect(readDraft(draft).rowKeys).toEqual([0, 1]);
    expect(messages({ ...draft, rows: [] })).toEqual({ rows: "Give at least one pull." });
  });

  it("asks for one of the two tilts of a slide", () => {
    const draft = withRow(writeDraft(FRICTION), 1, (row) => ({ ...row, cells: {}, aside: "dusty" }));
    expect(Object.keys(messages(draft))).toEqual(["rows.1.slid"]);
  });
});

describe("readDraft, a row that contradicts itself", () => {
  it("names the row by its place, in the units as typed, and keeps it in the data; set aside it is right", () => {
    let draft = withCell(writeDraft(PULL), 0, "held", "1400 g");
    draft = withCell(draft, 0, "letGo", "1.3 kg");
    expect(messages(draft)).toEqual({
      "rows.0":
        "Row 1: let go at 1.3\u202fkg, below the 1400\u202fg it held. Correct one of them, or set the row aside.",
    });
    expect(readDraft(draft).rowKeys).toEqual([0, 1]);
    expect(messages(withRow(draft, 0, (row) => ({ ...row, aside: "misread" })))).toEqual({});
  });

  it("is a slide that held steeper than it slid as well", () => {
    let draft = withCell(writeDraft(FRICTION), 0, "held", "45°");
    draft = withCell(draft, 0, "slid", "40°");
    expect(messages(draft)["rows.0"]).toMatch(/^Row 1: slid at 40°, flatter than the 45° at which it held\./);
  });
});

describe("readDraft, heights at one load", () => {
  it("are refused in words, once every reading can be read", () => {
    const [loaded, other] = ["300 g", "2.94199 N"];
    let draft = writeDraft(RIDE_HEIGHT);
    for (const { key } of draft.rows) draft = withCell(draft, key, "load", loaded);
    expect(messages(draft).rows).toMatch(/^Every height was read at 300 g; allowed: two loads or more/);
    expect(messages(withCell(draft, 0, "load", other)).rows).toBeUndefined();
    expect(messages(withCell(draft, 0, "height", "?")).rows).toBeUndefined();
  });
});

describe("readDraft, a cell without a unit", () => {
  it("means the unit of its column's header, else the quantity's first", () => {
    const draft = withCell(writeDraft(PULL), 0, "held", "4");
    const held = (units: Draft["units"]) => readDraft({ ...draft, units }).data.rows;
    expect(held({ held: "N" })).toMatchObject([{ held: { value: 4, unit: "N" } }, {}]);
    expect(held({})).toMatchObject([{ held: { value: 4, unit: "g" } }, {}]);
  });
});

describe("readDraft, the bleed plate", () => {
  it("takes a count left empty beside others as shut", () => {
    const draft = withRow(writeDraft(PLATE_CURVE), 1, (row) => ({ ...row, open: ["4", ""] }));
    expect(readDraft(draft).data.rows).toMatchObject([{}, { open: [4, 0] }, {}]);
  });

  it("asks how many were open where no count was typed, and refuses more than there are", () => {
    let draft = withRow(writeDraft(PLATE_CURVE), 0, (row) => ({ ...row, open: ["", ""] }));
    draft = withRow(draft, 1, (row) => ({ ...row, open: ["9", "0"] }));
    expect(messages(draft)).toEqual({
      "rows.0.open": "How many holes were open? 0 where the plate was shut.",
      "rows.1.open": 'Read "9"; allowed: a whole number, 0 to 8, for example "2".',
    });
  });

  it("names the hole whose size can't be read, and a plate without holes", () => {
    const draft = writeDraft(PLATE_CURVE);
    expect(Object.keys(messages(withHole(draft, 1, { count: "2.5", diameter: "" })))).toEqual([
      "plate.holes.1.diameter",
      "plate.holes.1.count",
    ]);
    expect(messages({ ...draft, holes: [] }).plate).toMatch(/diameter, thickness, count/);
  });

  it("adds and takes out a kind of hole in plate and rows together", () => {
    const more = withNewHole(writeDraft(PLATE_CURVE));
    expect(more.rows.map((row) => row.open.length)).toEqual([3, 3, 3]);
    expect(withoutHole(more, 0).rows.map((row) => row.open)).toEqual([
      ["0", ""],
      ["0", ""],
      ["4", ""],
    ]);
  });
});
