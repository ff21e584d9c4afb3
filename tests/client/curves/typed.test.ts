import { describe, expect, it } from "vitest";
import { describeReading, readingAt } from "#client/views/curves/chosen.ts";
import { testName, typedRow, typedText } from "#client/views/curves/typed.ts";
import type { StoredOf } from "#shared/model/record.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";

const curve = {
  kind: "curve",
  title: "",
  date: "2026-03-01",
  rows: [
    { speed: { value: 24000, unit: "rpm" }, pressure: { value: 0.4, unit: "psi" }, open: [2, 0] },
    {
      speed: { value: 400, unit: "Hz" },
      pressure: { value: 12, unit: "mmH2O" },
      open: [0, 0],
      setAside: "wet",
    },
  ],
} as unknown as BenchTest;
const stored = { id: "t-1", revision: 1, createdAt: "", updatedAt: "", data: curve } as StoredOf<"tests">;

describe("typedRow", () => {
  it("says every quantity in the unit as typed, for a row in psi", () => {
    expect(typedRow(curve, 0)).toEqual([
      { label: "speed", text: "24000 rpm" },
      { label: "pressure", text: "0.4 psi" },
      { label: "holes open", text: "2 + 0" },
    ]);
  });

  it("says that a pull was stopped before, where it never let go", () => {
    const pull = {
      kind: "pull",
      rows: [{ held: { value: 420, unit: "g" }, letGo: null }],
    } as unknown as BenchTest;
    expect(typedRow(pull, 0).map(({ text }) => text)).toEqual(["420 g", "stopped before"]);
  });

  it("says nothing of a row that is not there", () => {
    expect(typedRow(curve, 9)).toEqual([]);
  });
});

describe("names and keys of readings", () => {
  it("calls a test without a title by its kind and day", () => {
    expect(testName(stored)).toBe("Curve test of 2026-03-01");
  });

  it("leaves a bare fraction without a unit", () => {
    expect(typedText({ value: 0.5, unit: "1" })).toBe("0.5");
  });

  it("finds the reading of a key, its drop's key as well", () => {
    expect(readingAt([stored], "t-1#1")).toEqual({ test: stored, row: 1 });
    expect(readingAt([stored], "t-1#1-drop")?.row).toBe(1);
    expect(readingAt([stored], "t-2#1")).toBeNull();
    expect(readingAt([stored], null)).toBeNull();
  });

  it("describes a reading by test, row, what was typed and why it is set aside", () => {
    expect(describeReading([stored], "t-1#1")).toEqual([
      "Curve test of 2026-03-01, row 2",
      "speed 400 Hz",
      "pressure 12 mmH2O",
      "holes open 0 + 0",
      "set aside: wet",
    ]);
  });
});
