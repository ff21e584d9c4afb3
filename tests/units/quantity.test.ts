import { describe, expect, it, vi } from "vitest";
import { DIMENSION_NAMES, dimension } from "#shared/units/dimensions.ts";
import { hasFreeUnit, toSI } from "#shared/units/quantity.ts";

/** Factors: NIST SP 811 (2008), Appendix B.8; the ounce is 28.349 523 125 g exactly. */
describe("a quantity in a unit of the table", () => {
  it.each([
    [{ value: 2, unit: "oz" }, "load", 2 * 0.028349523125 * 9.80665],
    [{ value: 0.002, unit: "MPa" }, "pressure", 2000],
    [{ value: 30, unit: "kPa" }, "stress", 30_000],
    [{ value: 18, unit: " C " }, "temperature", 291.15],
    [{ value: 0.6, unit: "" }, "fraction", 0.6],
  ] as const)("%o is read as %s, with nothing more loaded", (typed, name, si) => {
    expect(toSI(typed, name)).toBeCloseToRelative(si, 1e-12);
  });

  it("has no free unit, whichever of the table's it stands in", () => {
    for (const name of DIMENSION_NAMES)
      for (const { label } of dimension(name).shown)
        expect(hasFreeUnit({ reading: { value: 1, unit: label } }), `${name} in ${label}`).toBe(false);
  });
});

describe("a quantity in a unit beyond the table", () => {
  const record = { rows: [{ flow: { value: 1, unit: "L/s" } }, { flow: { value: 300, unit: "cm^3/s" } }] };

  it("is found, deep in a record, among units of the table", () => {
    expect(hasFreeUnit(record)).toBe(true);
    expect(hasFreeUnit([record])).toBe(true);
    expect(hasFreeUnit({ ...record, rows: record.rows.slice(0, 1), unit: "cm^3/s", note: null })).toBe(false);
  });

  it("is never read as something else, before the reader is loaded, and is read once it is", async () => {
    vi.resetModules();
    const fresh = await import("#shared/units/quantity.ts");
    const [, { flow }] = record.rows;
    expect(() => fresh.toSI(flow, "flow")).toThrow(/cm\^3\/s.*parse\.ts/);
    await import("#shared/units/parse.ts");
    expect(fresh.toSI(flow, "flow")).toBeCloseToRelative(3e-4, 1e-12);
  });
});
