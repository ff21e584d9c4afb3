import { describe, expect, it } from "vitest";
import { countInWords } from "#client/views/bench/import/countWords.ts";
import { curesOf } from "#client/views/bench/import/cures.ts";
import { keepLayout } from "#client/views/bench/import/layouts.ts";
import { createImport, type ImportModel } from "#client/views/bench/import/model.ts";
import { takeAs, takeIn } from "#client/views/bench/import/takeIn.ts";
import type { TestKind } from "#shared/model/tests/index.ts";
import { useBrowserStore } from "#tests/support/browserStore.ts";
import { demoBook } from "#tests/support/demoBook.ts";

useBrowserStore();
const book = demoBook();

function imported(kind: TestKind, text: string, name = "log.csv"): ImportModel {
  const model = createImport(book, new Date(2026, 2, 30), kind);
  void takeIn(model, { name, text });
  return model;
}

const cellsOf = (model: ImportModel, form = 0) =>
  model.forms.value[form].draft.value.rows.map(({ cells }) => cells);
const fieldsOf = (model: ImportModel) => model.forms.value.map((form) => form.draft.value.fields);

/** A cell drawn for a while, as a logger writes it that counts what flows out as negative; invented. */
function cellLog(lines: number): string {
  const rows = Array.from({ length: lines }, (_, i) => {
    const current = i === 0 ? "0.000" : (-2 - (i % 5) / 100).toFixed(3);
    return `${i}\t${(4.15 - i * 2e-4).toFixed(4)}\t${current}`;
  });
  return `Time_s\tVoltage_V\tCurrent_A\n${rows.join("\n")}\n`;
}

describe("a cell log of 2755 lines that counts what is drawn as negative", () => {
  const model = imported("discharge", cellLog(2755));

  it("is read whole, with the sign of its current turned", () => {
    expect(countInWords(model.points.value)).toBe("2755 lines can be read, none is skipped.");
    expect(model.mapping.value[2]).toMatchObject({ role: "current", unit: "A", times: "-1" });
    expect(cellsOf(model)[1]).toEqual({ time: "1 s", voltage: "4.1498 V", current: "2.01 A" });
  });

  it("says in the note what was done to it", () => {
    expect(fieldsOf(model)[0].note).toBe("From log.csv: current times -1.");
  });

  it("with the factor taken out: says what the lines have in common, and the button that cures it", () => {
    const { causes } = (() => {
      model.mapping.value = model.mapping.value.map((column) => ({ ...column, times: "" }));
      return model.points.value;
    })();
    expect(model.points.value).toMatchObject({ read: 1, skipped: 2754 });
    expect(causes).toMatchObject([{ common: "current must not be below 0", count: 2754, trouble: "sign" }]);
    const { table, mapping } = model;
    if (!table.value) throw new Error("no table");
    const [cure] = curesOf(causes[0], mapping.value, table.value);
    expect(cure.label).toBe("Turn the sign of “Current_A”");
    if (cure.change.what !== "column") throw new Error("no change of a column");
    expect(cure.change.column.times).toBe("-1");
  });
});

describe("a column that is negative in places", () => {
  it("keeps its sign: nothing says that the whole column is turned", () => {
    const model = imported("discharge", "t_s,U_V,I_A\n0,4,0.5\n1,4,-0.1\n");
    expect(model.mapping.value[2].times).toBeUndefined();
    expect(model.points.value.skipped).toBe(1);
  });
});

describe("times as loggers write them", () => {
  it.each([
    ["0:00:00", "0:01:30", ["0 s", "90 s"]],
    ["14:32:10", "14:33:40", ["0 s", "90 s"]],
    ["23:59:50", "0:00:10", ["0 s", "20 s"]],
    ["2026-03-14T12:00:00Z", "2026-03-14T12:00:02.5Z", ["0 s", "2.5 s"]],
    ["14.03.2026 12:00:00", "14.03.2026 12:01:00", ["0 s", "60 s"]],
    ["1773489600", "1773489601.5", ["0 s", "1.5 s"]],
  ])("%s and %s begin with the run", (first, second, expected) => {
    const model = imported("discharge", `time;U_V;I_A\n${first};4.1;1\n${second};4.0;1\n`);
    expect(cellsOf(model).map(({ time }) => time)).toEqual(expected);
  });
});

describe("a motor bench with an electrical speed, four rotors and a scale that wasn't zeroed", () => {
  const text = "n_rps,thrust_g,I_A\n700,412.4,5\n1400,1612.4,12\n";
  const model = imported("thrust", text);
  model.mapping.value = model.mapping.value.map((column) => {
    if (column.role === "speed") return { ...column, times: "1/7" };
    if (column.role === "thrust") return { ...column, times: "1/4", minus: "12.4" };
    return column;
  });

  it("reads the speed over the pole pairs and each rotor's thrust less the tare", () => {
    expect(cellsOf(model)).toEqual([
      { speed: "100 rev/s", thrust: "100 g", current: "5 A" },
      { speed: "200 rev/s", thrust: "400 g", current: "12 A" },
    ]);
    expect(fieldsOf(model)[0].note).toBe("From log.csv: speed times 1/7; thrust less 12.4, times 1/4.");
  });

  it("reads the next file of this layout alike, once it was saved", () => {
    const { table, mapping } = model;
    keepLayout("thrust", table.value?.header ?? [], { mapping: mapping.value, only: [], splitBy: null });
    const next = imported("thrust", "n_rps,thrust_g,I_A\n1050,812.4,8\n");
    expect(next.remembered.value).toBe(true);
    expect(cellsOf(next)).toEqual([{ speed: "150 rev/s", thrust: "200 g", current: "8 A" }]);
  });

  it("asks for a factor that can be read before a line is read", () => {
    model.mapping.value = model.mapping.value.map((column, i) =>
      i === 0 ? { ...column, times: "seven" } : column,
    );
    expect(model.missing.value).toEqual([expect.stringMatching(/n_rps: "seven" is no factor; allowed/)]);
    expect(model.points.value.read).toBe(0);
  });
});

describe("a file of several runs", () => {
  const text =
    "prop,V_nominal,thrust_gf,rpm,time\na,7.4,10,3000,5\na,11.1,20,4000,6\nb,7.4,30,5000,7\n,7.4,40,6000,8\n";
  const model = imported("thrust", text);
  model.splitBy.value = 0;
  model.only.value = [{ column: 1, text: "7.4" }];
  model.form.draft.value = {
    ...model.form.draft.value,
    fields: { ...model.form.draft.value.fields, title: "Five inch" },
  };

  it("becomes one test a value of a column, of the lines that are asked for", () => {
    expect(fieldsOf(model).map(({ title }) => title)).toEqual(["Five inch, prop a", "Five inch, prop b"]);
    expect(cellsOf(model, 0)).toEqual([{ voltage: "7.4 V", thrust: "10 gf", speed: "3000 rpm" }]);
    expect(fieldsOf(model)[0].note).toBe("From log.csv: only lines with V_nominal 7.4.");
  });

  it("counts what nobody asked for apart from what is skipped, and says why", () => {
    expect(countInWords(model.points.value)).toBe(
      "Two lines can be read, one line is skipped; one line is not asked for.",
    );
    expect(model.points.value.bad[0].reason).toBe("prop is empty, and the file is split by it");
  });
});

describe("a log denser than a test can hold", () => {
  it("keeps every n-th line and says so in the note", () => {
    const model = imported("discharge", cellLog(12_000));
    const [rows] = [cellsOf(model)];
    expect(rows).toHaveLength(3000);
    expect(rows.slice(0, 2).map(({ time }) => time)).toEqual(["0 s", "4 s"]);
    expect(fieldsOf(model)[0].note).toBe(
      "From log.csv: current times -1; every 4th line kept, 3000 of 12000.",
    );
  });
});

describe("a file read under the wrong decimal sign", () => {
  it("offers the other one, and reads every line with it", () => {
    const model = imported("weigh-in", "note;Reading [g]\na;412,3\nb;398,1\n");
    takeAs(model, { decimal: "." });
    const { causes, skipped } = model.points.value;
    expect(skipped).toBe(2);
    if (!model.table.value) throw new Error("no table");
    const cures = curesOf(causes[0], model.mapping.value, model.table.value);
    expect(cures[0].label).toBe("Read decimals by comma");
    takeAs(model, { decimal: "," });
    expect(cellsOf(model)).toEqual([{ reading: "412.3 g" }, { reading: "398.1 g" }]);
  });
});
