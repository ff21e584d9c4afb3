import { describe, expect, it } from "vitest";
import { resolveBuild } from "#shared/book/resolve.ts";
import { tipClearanceNotes } from "#shared/book/tipClearance.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const rotor = {
  sizes: [{ diameter: 0.04, tipClearance: 4e-4 }, { diameter: 0.05, tipClearance: 4e-4 }, { diameter: 0.06 }],
};
const codes = (diameter: number, from: number | null) =>
  tipClearanceNotes(rotor, diameter, from).map(({ code }) => code);

describe("tipClearanceNotes, of a family whose sizes share one clearance", () => {
  it("scaled from another listed size, say that the clearance was not scaled", () => {
    expect(codes(0.05, 0.04)).toEqual(["tip-clearance-not-scaled"]);
  });

  it("of a tested size, of one without a clearance and of one that isn't listed are none", () => {
    expect(codes(0.05, null)).toEqual([]);
    expect(codes(0.06, 0.04)).toEqual([]);
    expect(codes(0.04, 0.06)).toEqual([]);
    expect(codes(0.045, 0.04)).toEqual([]);
    expect(tipClearanceNotes(null, 0.05, 0.04)).toEqual([]);
  });
});

describe("a build of the book whose rotor was tested at another size", () => {
  const book = demoBook();
  const { data } = book.builds.find(({ id }) => id === "pane-crawler") ?? {};
  if (!data) throw new Error("no build");
  const [from, to] = [0.038, 0.048];
  const withSizes = (clearance: number) => ({
    ...book,
    rotors: book.rotors.map((each) => ({
      ...each,
      data: {
        ...each.data,
        sizes: [
          ...each.data.sizes.filter(({ diameter }) => diameter < to),
          { diameter: to, tipClearance: clearance },
        ],
      },
    })),
  });

  it("says both ratios among its notes; one scaled along says nothing", () => {
    const build = { ...data, diameter: to };
    const resolved = resolveBuild(withSizes(1.5e-3), build);
    const tested = resolved.scaledFrom ?? from;
    const [note] = resolved.notes;
    expect(note?.code).toBe("tip-clearance-not-scaled");
    expect(note?.message).toContain("3.13 %");
    const own = book.rotors.find(({ id }) => id === build.rotor)?.data.sizes;
    const clearance = own?.find(({ diameter }) => diameter === tested)?.tipClearance ?? Number.NaN;
    const scaled = resolveBuild(withSizes((clearance * to) / tested), build);
    expect(scaled.notes.map(({ code }) => code)).not.toContain("tip-clearance-not-scaled");
  });
});
