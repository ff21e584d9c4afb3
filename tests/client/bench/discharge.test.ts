import { describe, expect, it } from "vitest";
import { exportCsv } from "#client/views/bench/list/exportCsv.ts";
import { resultLine } from "#client/views/bench/list/resultLine.ts";
import { readDraft } from "#client/views/bench/record/readDraft.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import { runDischarge } from "#client/views/bench/running/discharge.ts";
import { inlined } from "#shared/book/named.ts";
import { dischargeTest } from "#shared/model/tests/discharge.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();

function demoTest(pack: string) {
  const found = book.tests.find(({ data }) => data.kind === "discharge" && data.pack === pack);
  const data = found && inlined(book, found.data);
  if (data?.kind !== "discharge") throw new Error("The demo has no such discharge test.");
  return data;
}
const test = demoTest("one-cell-650");
const keys = test.rows.map((_, key) => ({ key, number: key + 1 }));

describe("a discharge test on the bench", () => {
  it("comes back from the form as it was stored", () => {
    const { data, errors } = readDraft(writeDraft(test));
    expect([...errors]).toEqual([]);
    expect(dischargeTest.parse(data)).toEqual(test);
  });

  it("says in the list what it holds", () => {
    expect(resultLine(test)).toMatch(/^32 readings, 3\.\d+–4\.\d+.V, 6\d\d.mAh drawn, 11 at rest$/);
  });

  it("goes out as CSV with its pack and its columns", () => {
    const csv = exportCsv(test, { setUp: true });
    expect(csv).toMatch(/^# kind = discharge\r\n/);
    expect(csv).toMatch(/# pack = one-cell-650/);
    expect(csv).toMatch(/Drawn so far \[mAh\],Voltage \[V\],Current \[A\]/);
  });

  it("says resistance, capacity and voltages while it is typed", () => {
    const { figures, byRow, next } = runDischarge(test, keys, book);
    expect(next).toBeNull();
    expect(figures.map(({ label }) => label)).toEqual([
      "Cell resistance",
      "Cell capacity",
      "Open-circuit, a cell",
    ]);
    expect(figures.every(({ mark }) => mark === undefined)).toBe(true);
    expect(byRow.get(0)).toMatch(/V a cell$/);
  });

  it("half-typed: says what to measure next, and marks what it takes from the pack", () => {
    expect(runDischarge({ ...test, rows: [] }, [], book).next).toMatch(/the full pack at rest/);
    expect(runDischarge({ ...test, pack: "" }, keys, book).next).toMatch(/Choose the pack/);
    const loaded = { ...test, rows: test.rows.filter(({ current }) => current.value > 0) };
    const { figures, notes } = runDischarge(loaded, keys, book);
    expect(figures[0].mark).toBe("stated");
    expect(notes.join()).toMatch(/Rest for a minute/);
  });

  it("by time alone: counts the charge from current and time", () => {
    const minute = (value: number) => ({ value, unit: "min" });
    const rows = [0, 30, 60].map((at, i) => ({
      time: minute(at),
      voltage: { value: 4.1 - 0.3 * i, unit: "V" },
      current: { value: 1, unit: "A" },
    }));
    const { figures } = runDischarge({ ...test, rows }, keys, book);
    // An hour at 1 A.
    expect(figures[1].text).toMatch(/^1000.mAh$/);
  });
});
