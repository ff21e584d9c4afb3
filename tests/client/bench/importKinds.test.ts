import { describe, expect, it } from "vitest";
import { guessMapping } from "#client/views/bench/import/mapping.ts";
import { createImport, type ImportModel, tooManyRows } from "#client/views/bench/import/model.ts";
import { silenceOf } from "#client/views/bench/import/silence.ts";
import { otherKind, takeIn } from "#client/views/bench/import/takeIn.ts";
import { exportCsv } from "#client/views/bench/list/exportCsv.ts";
import { type BenchTest, benchTest, type TestKind } from "#shared/model/tests/index.ts";
import { useBrowserStore } from "#tests/support/browserStore.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { DISCHARGE, EXAMPLES, FRICTION, LEAK, MOTOR, PULL } from "./examples.ts";

useBrowserStore();
const book = demoBook();

function imported(kind: TestKind, text: string): ImportModel {
  const model = createImport(book, new Date(2026, 2, 30), kind);
  void takeIn(model, { name: "some file.csv", text });
  return model;
}

/** What would be sent, as the server would store it. */
function stored(model: ImportModel): BenchTest[] {
  return model.forms.value.map((form) => {
    expect([...form.read.value.errors]).toEqual([]);
    return benchTest.parse(form.read.value.data);
  });
}

const typed = (value: number, unit: string) => ({ value, unit });

/** What a round trip could lose: rows set aside, nulls, yes and no, zeros, fractions, texts with signs in them. */
const HARD: readonly BenchTest[] = [
  { ...PULL, title: "" },
  { ...PULL, rows: PULL.kind === "pull" ? PULL.rows.map((row) => ({ ...row, letGo: null })) : [] },
  {
    ...MOTOR,
    rows: [
      {
        voltage: typed(3, "V"),
        current: typed(0.3, "A"),
        speed: typed(22000, "rpm"),
        noLoad: true,
        throttle: typed(0.7, "1"),
      },
      {
        voltage: typed(3.9, "V"),
        current: typed(6, "A"),
        speed: typed(0, "rpm"),
        noLoad: false,
        throttle: typed(100, "%"),
        setAside: 'blocked by hand, "3,5 s"; too long',
      },
    ],
  },
  {
    ...LEAK,
    flowFrom: "known-flow",
    plate: undefined,
    rows: [
      { pressure: typed(50, "Pa"), flow: typed(0, "L/s") },
      { pressure: typed(0.8, "kPa"), flow: typed(2.1, "L/min"), setAside: "lip lifted" },
    ],
  },
  {
    ...FRICTION,
    contact: "skirt",
    skirt: "s1",
    rows: [
      { held: typed(33.5, "°"), slid: null, setAside: "board shook" },
      { held: null, slid: typed(0.6, "rad") },
    ],
  },
  {
    ...DISCHARGE,
    rows: [
      { time: typed(0, "min"), voltage: typed(4.18, "V"), current: typed(0, "A") },
      {
        time: typed(90, "s"),
        voltage: typed(3.9, "V"),
        current: typed(2.6, "A"),
        setAside: "1,5 min read late",
      },
    ],
  },
].map((test) => benchTest.parse(JSON.parse(JSON.stringify(test))));

describe("a test of every kind, exported and imported", () => {
  it.each([...EXAMPLES, ...HARD].map((test, i) => [`${i + 1}: ${test.kind}`, test] as const))(
    "%s comes back the same",
    (_name, test) => {
      expect(stored(imported(test.kind, exportCsv(test, { setUp: true })))).toEqual([test]);
    },
  );

  it("every test of the demo comes back the same", () => {
    expect(new Set(book.tests.map(({ data }) => data.kind)).size).toBe(10);
    for (const { data } of book.tests)
      expect(stored(imported(data.kind, exportCsv(data, { setUp: true })))).toEqual([data]);
  });

  it("under the wrong kind: says which kind it is", () => {
    expect(otherKind(imported("curve", exportCsv(DISCHARGE, { setUp: true })))).toBe("discharge");
    expect(otherKind(imported("discharge", exportCsv(DISCHARGE, { setUp: true })))).toBeNull();
    expect(otherKind(imported("pull", "held\n3\n"))).toBeNull();
  });

  it("after another file: takes nothing of that one over", () => {
    const model = imported("pull", exportCsv(PULL, { setUp: true }));
    void takeIn(model, { name: "", text: exportCsv({ ...PULL, title: "", note: "" }, { setUp: true }) });
    expect(model.form.draft.value.fields.title).toBe("");
  });
});

const roles = (kind: TestKind, header: string) =>
  imported(kind, `${header}\n${header.replace(/[^,]+/g, "1")}\n`).mapping.value.map(({ role, unit }) =>
    `${role} ${unit}`.trim(),
  );

describe("headers that people write", () => {
  it.each([
    ["pull", "held_g,let go (N),voltage (V),shim_mm,test", "held g|letGo N|voltage V|gap mm|test"],
    ["motor", "voltage (V),I_mA,rpm,no load,throttle_%", "voltage V|current mA|speed rpm|noLoad|throttle %"],
    ["leak", "cavity pressure [mmH2O],Q_Lpm", "pressure mmH2O|flow L/min"],
    ["leak", "p_Pa,dp plate [Pa],open 1", "pressure Pa|platePressure Pa|open"],
    ["friction", "held_deg,slid [°],set aside", "held deg|slid °|setAside"],
    ["discharge", "mAh,t_min,cell voltage [mV],I [A]", "charge mAh|time min|voltage mV|current A"],
    ["ride-height", "weight [g],h_mm,set aside", "load g|height mm|setAside"],
    ["weigh-in", "weight [oz],note", "reading oz|ignore"],
    ["run-log", "outcome,angle_deg,driving,U_V,t_min", "outcome|angle deg|driving|voltage V|time min"],
  ] as const)("of a %s test, %s, are found with their units", (kind, header, expected) => {
    expect(roles(kind, header).join("|")).toBe(expected);
  });
});

describe("a file with several tests", () => {
  const model = imported("friction", "test,held,slid\ndry,30,31\nwet,20,22\ndry,30.5,32\n");

  it("becomes one test for each title that its column names, in the file's order", () => {
    const drafts = model.forms.value.map((form) => form.draft.value);
    expect(drafts.map(({ fields }) => fields.title)).toEqual(["dry", "wet"]);
    expect(drafts.map(({ rows }) => rows.length)).toEqual([2, 1]);
  });

  it("of curves: becomes one test for each title, or for each title and speed", () => {
    const curves = imported("curve", "title,rpm,Q,p\na,800,1,2\nb,800,1,3\nb,1000,1,5\n");
    const titles = () => curves.forms.value.map((form) => form.draft.value.fields.title);
    expect(titles()).toEqual(["a", "b"]);
    curves.perSpeed.value = true;
    expect(titles()).toEqual(["a", "b", "b"]);
  });

  it("asks once for what all of them need", () => {
    const asked = model.forms.value.map((form) => [...form.read.value.errors.keys()]);
    expect(asked).toEqual([
      ["surface", "contact"],
      ["surface", "contact"],
    ]);
  });
});

const reasons = (model: ImportModel) =>
  model.points.value.bad.map(({ line, reason }) => `${line}: ${reason}`);

describe("a file that is not as it should be", () => {
  it.each([
    [
      "pull",
      "held,let go\nx,3\n,3\n-2,3\n4 V,3\n3\n5,?\n",
      [
        '2: held "x" is no number',
        "3: held is empty",
        "4: held must not be below 0, read -2 g",
        '5: held "4 V" can\'t be read',
        "6: 1 cells, the header has 2",
        '7: let go "?" is no number',
      ],
    ],
    [
      "motor",
      "V,I,rpm,no load\n3,1,2,perhaps\n3,1,-2,yes\n3,,2,no\n",
      [
        '2: no load "perhaps" is neither yes nor no',
        "3: speed must not be below 0, read -2 rpm",
        "4: current is empty",
      ],
    ],
    ["leak", "p,Q\n0,1\n5,\n", ["2: suction must be more than 0, read 0 Pa", "3: flow is empty"]],
    [
      "friction",
      "held,slid\n,0\n30,31\n,\n-,\n",
      ["2: slid must be more than 0, read 0 °", '5: held "-" is no number'],
    ],
    [
      "discharge",
      "charge,time,V,I\n1,,4,0\n,5,4,1\n3,,0,1\n",
      ["3: drawn so far is empty", "4: voltage must be more than 0, read 0 V"],
    ],
    [
      "run-log",
      "outcome,angle\nHeld,90\nflew,90\nslid,\nfell,-5\n",
      [
        '3: it "flew" is none of held, slid, fell, stalled',
        "4: inclination is empty",
        "5: inclination must not be below 0, read -5 °",
      ],
    ],
    [
      "ride-height",
      "load,height\n0,0.6\n,0.5\n-100,-1\n",
      ["3: load is empty", "4: height of the lip must not be below 0, read -1 mm"],
    ],
  ] as const)(
    "a %s test: each line that can't be read is skipped with its reason",
    (kind, text, expected) => {
      expect(reasons(imported(kind, text))).toEqual(expected);
    },
  );

  it.each([
    ["semicolons and decimal commas", "\uFEFFheld_g;let go_g\r\n410,5;430\r\n"],
    ["tabs and decimal commas", "held_g\tlet go_g\n410,5\t430\n"],
    ["commas", 'held_g,let go_g\n"410.5","430"\n'],
  ])("with %s: reads the same numbers", (_with, text) => {
    const { good } = imported("pull", text).points.value;
    expect(good.map(({ row }) => row.cells)).toEqual([{ held: "410.5 g", letGo: "430 g" }]);
  });

  it("with decimal commas between commas: skips the line, guesses nothing", () => {
    expect(reasons(imported("pull", "held,let go\n410,5,430,5\n"))).toEqual(["2: 4 cells, the header has 2"]);
  });

  it.each([
    ["pull", "let go\n3\n", ["Choose the column with what held."]],
    ["motor", "V\n3\n", ["Choose the column with the current.", "Choose the column with the speed."]],
    ["leak", "p,plate\n3,2\n", ["Give the bleed plate's holes below."]],
    ["leak", "p\n3\n", ["Choose the column with the flow."]],
    ["friction", "a,b\n3,2\n", ['Choose the column with "held", or with "slid".']],
    ["ride-height", "load\n3\n", ["Choose the column with the height of the lip."]],
    ["discharge", "V,I\n3,1\n", ['Choose the column with "drawn so far", or with "time".']],
  ] as const)(
    "a %s test without a column it needs, %j, asks for it and reads nothing",
    (kind, text, expected) => {
      const model = imported(kind, text);
      expect(model.missing.value).toEqual(expected);
      expect(model.points.value.good).toEqual([]);
    },
  );

  it("with a unit that nobody knows in a header: reads nothing until one is chosen", () => {
    const model = imported("pull", "held [clicks]\n3\n");
    expect(model.missing.value).toEqual([
      'Choose the unit of "held [clicks]": the header names none that is known.',
    ]);
    model.mapping.value = [{ role: "held", unit: "kg" }];
    expect(model.points.value.good[0].row.cells).toEqual({ held: "3 kg" });
  });

  it("empty, or a header alone: says so", () => {
    expect(imported("motor", "").message.value).toMatch(/nothing in it/);
    expect(imported("motor", "V,I,rpm\n").message.value).toMatch(/only a header/);
  });

  it.each([
    ["motor", "V,I,rpm", "3,1,2"],
    ["discharge", "charge,V,I", "3,1,2"],
  ] as const)(
    "a %s test with one row too many, of a log: is thinned out, and its note says so",
    (kind, header, row) => {
      const [form] = imported(kind, `${header}\n${`${row}\n`.repeat(5001)}`).forms.value;
      expect(form.draft.value.rows).toHaveLength(2501);
      expect(form.draft.value.fields.note).toMatch(/every 2nd line kept, 2501 of 5001/);
    },
  );

  it.each([["pull", "held", "3", 1000, "pulls"]] as const)(
    "a %s test with one row too many can't be sent, and says how many it may have",
    (kind, header, row, most, rows) => {
      const many = (count: number) => imported(kind, `${header}\n${`${row}\n`.repeat(count)}`).forms.value;
      expect(tooManyRows(many(most))).toBeNull();
      expect(tooManyRows(many(most + 1))).toBe(
        `There are ${most + 1} ${rows} in one test; allowed: at most ${most}. Split it, or thin the file out.`,
      );
    },
  );
});

describe("what a file doesn't say", () => {
  it("is asked for, nothing of an earlier test is taken", () => {
    const [form] = imported("pull", "held\n3\n").forms.value;
    expect([...form.read.value.errors.keys()]).toEqual([
      "rotor",
      "diameter",
      "motor",
      "pack",
      "skirt",
      "surface",
      "direction",
      "rigMass",
      "duty",
    ]);
  });

  it("of a thrust test is asked for as before", () => {
    const [form] = imported("thrust", "rpm,thrust\n3,1\n").forms.value;
    expect([...form.read.value.errors.keys()]).toEqual(["rotor", "diameter"]);
  });
});

describe("silenceOf, columns that a file lacks", () => {
  it("says what is taken in their place, and nothing where none is lacking", () => {
    expect(silenceOf("motor", guessMapping(["V", "I", "rpm"], "motor"))).toBe(
      'Not in the file, so in every run "no load" is no, "throttle" is 100 %.',
    );
    expect(silenceOf("pull", guessMapping(["held"], "pull"))).toBe(
      'Not in the file, so in every pull "let go" is left empty.',
    );
    expect(silenceOf("friction", guessMapping(["held", "slid"], "friction"))).toBeNull();
  });
});
