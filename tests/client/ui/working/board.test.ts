import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { asText } from "#client/ui/working/asText.ts";
import { boardOf } from "#client/ui/working/board.ts";
import { type Piece, parseEquation } from "#client/ui/working/parseEquation.ts";
import { originBehind, workingBehind } from "#shared/physics/working.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const boardFor = (id: string) => {
  const build = book.builds.find((each) => each.id === id);
  if (!build) throw new Error(`The demo has no ${id}.`);
  return boardOf(book, solve(book, build.data));
};
const kindsOf = (tests: readonly string[]) =>
  new Set(book.tests.filter(({ id }) => tests.includes(id)).map(({ data }) => data.kind));

/** Signs that a reader of formulas should have read away. */
function leftovers(pieces: readonly Piece[]): string[] {
  return pieces.flatMap((piece) => {
    if (piece.kind === "sign") return /^[/_^√₀-₉]/.test(piece.text) ? [piece.text] : [];
    if (piece.kind === "fraction") return [...leftovers(piece.over), ...leftovers(piece.under)];
    if (piece.kind === "root" || piece.kind === "group") return leftovers(piece.of);
    return piece.kind === "script" ? [...leftovers([piece.base]), ...leftovers(piece.sup)] : [];
  });
}

describe("the workings of every build of the demo", () => {
  const ids = book.builds.map(({ id }) => id);

  it.each(ids)("%s: every equation is read without a sign left over, every source names its page", (id) => {
    const { workings } = boardFor(id);
    expect(workings.length).toBeGreaterThan(6);
    for (const { equation, source, title } of workings) {
      expect(parseEquation(equation).flatMap(leftovers), title).toEqual([]);
      if (!title.startsWith("flow through everything"))
        expect(source, title).toMatch(/docs\/method\/[\w/-]+\.md/);
    }
  });

  it("leads a margin's friction down to the tilt tests, a curve's coefficients to the curve tests", () => {
    const { workings, origins } = boardFor("pane-crawler");
    const behind = (title: string, symbol: string) => {
      const value = workings
        .find((each) => each.title === title)
        ?.values.find((each) => each.symbol === symbol);
      return value ? originBehind(value, origins) : null;
    };
    expect(kindsOf(behind("margin at 90°, driving", "μ_w")?.tests ?? [])).toContain("friction");
    expect(kindsOf(behind("pressure coefficient of the rotor", "a₁")?.tests ?? [])).toEqual(
      new Set(["curve"]),
    );
    expect(kindsOf(behind("torque constant", "K_v")?.tests ?? [])).toEqual(new Set(["motor"]));
  });

  it("leads the margin's pull to the pull, its suction to the rotor, its air to the day's", () => {
    const { workings } = boardFor("pane-crawler");
    const down = (title: string, symbol: string) => {
      const value = workings
        .find((each) => each.title === title)
        ?.values.find((each) => each.symbol === symbol);
      return value ? workingBehind(value, workings)?.title : null;
    };
    expect(down("margin at 90°, driving", "F")).toBe("pull");
    expect(down("pull", "Δp")).toBe("pressure of the rotor");
    expect(down("pressure of the rotor", "ρ")).toBe("density of the air");
    expect(down("pressure of the rotor", "ψ")).toBe("pressure coefficient of the rotor");
    expect(down("margin at 90°, driving", "W")).toBe("weight, jolts included");
  });

  it("as text name equation, figures with units, source and tests", () => {
    const board = boardFor("pane-crawler");
    const [working] = board.workings.filter(({ title }) => title === "margin at 90°, parked");
    const text = asText(working, board);
    expect(text).toMatch(/^margin at 90°, parked: margin = \d\.\d+\n {2}margin = F\/F_needed/);
    expect(text).toContain("D = 44\u202fmm, rotor diameter. Set in the build.");
    expect(text).toMatch(/Tests: demo-\d+-curve/);
    expect(text).toContain("docs/method/holding.md");
  });
});
