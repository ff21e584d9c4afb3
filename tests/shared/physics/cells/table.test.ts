import { describe, expect, it } from "vitest";
import { cellCurve } from "#shared/model/parts/pack.ts";
import { CHEMISTRY_TABLES } from "#shared/physics/cells/table.ts";

describe.each(Object.entries(CHEMISTRY_TABLES))("the stored curve of %s", (_, table) => {
  it("is a curve that a pack could state, with its source and licence", () => {
    expect(cellCurve.safeParse(table.curve).success).toBe(true);
    expect(table.source).toMatch(/Sunil, Pattipati and Balasingam/);
    expect(table.licence).toBe("MIT");
  });
});
