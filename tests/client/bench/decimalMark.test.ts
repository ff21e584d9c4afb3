import { afterEach, describe, expect, it } from "vitest";
import { exportCsv } from "#client/views/bench/list/exportCsv.ts";
import { readDraft } from "#client/views/bench/record/readDraft.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import { setDecimalMark } from "#shared/units/decimalMark.ts";
import { PLATE_CURVE, PULL } from "./examples.ts";

afterEach(() => setDecimalMark("."));

describe("a stored test, for a reader who writes a decimal comma", () => {
  it("stands in its form with commas, holes and their coefficients too, and is read back the same", () => {
    setDecimalMark(",");
    const draft = writeDraft(PULL);
    expect(draft.fields.rigMass).toBe("12,5 g");
    expect(draft.rows[0].cells.voltage).toBe("3,92 V");
    expect(readDraft(draft).data).toEqual(PULL);
    const curve = writeDraft(PLATE_CURVE);
    expect(curve.holes[1]).toMatchObject({ diameter: "0,25 in", dischargeCoefficient: "0,82" });
    expect(readDraft(curve).data).toEqual(PLATE_CURVE);
  });

  it("goes into a file as it does for any other", () => {
    const files = [PULL, PLATE_CURVE].map((test) => exportCsv(test, { setUp: true }));
    setDecimalMark(",");
    expect([PULL, PLATE_CURVE].map((test) => exportCsv(test, { setUp: true }))).toEqual(files);
  });
});
