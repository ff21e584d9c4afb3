import { describe, expect, it } from "vitest";
import { type Piece, parseEquation } from "#client/ui/working/parseEquation.ts";

/** Written back with what stands over, under and beside made plain, so that the structure is seen. */
function written(pieces: readonly Piece[]): string {
  return pieces
    .map((piece) => {
      switch (piece.kind) {
        case "fraction":
          return `{${written(piece.over)}|${written(piece.under)}}`;
        case "root":
          return `root{${written(piece.of)}}`;
        case "group":
          return `${piece.open}${written(piece.of)}${piece.close}`;
        case "script":
          return `${written([piece.base])}${piece.sub && `_${piece.sub}`}${piece.sup.length > 0 ? `^${written(piece.sup)}` : ""}`;
        default:
          return piece.text;
      }
    })
    .join(" ");
}

const read = (text: string) => parseEquation(text).map(written);

describe("an equation in one line", () => {
  it.each([
    ["k = 60/(2πK_v)", ["k = {60|2 π K_v}"]],
    ["u = ω·D/2", ["u = {ω · D|2}"]],
    ["n = ω/2π", ["n = {ω|2 π}"]],
    ["Δp = ½ρu²·ψ(φ)", ["Δp = {1|2} ρ u^2 · ψ (φ)"]],
    ["Q = C_d·A·√(2Δp/ρ)", ["Q = C_d · A · root{{2 Δp|ρ}}"]],
    ["x⁺ = (L/D)/Re", ["x^+ = {{L|D}|Re}"]],
    ["C_L ∝ ρ^(x−1)·μ^(1−2x)", ["C_L ∝ ρ^x − 1 · μ^1 − 2 x"]],
    ["f = 96/Re + 1", ["f = {96|Re} + 1"]],
    ["a,  b", ["a ,", "b"]],
    ["T = T_a + R₂₀", ["T = T_a + R_20"]],
  ])("%s keeps what goes over what", (text, expected) => {
    expect(read(text)).toEqual(expected);
  });

  it("in words stays in words", () => {
    expect(read("both axle lines stay loaded for headings up, down and across")).toEqual([
      "both axle lines stay loaded for headings up, down and across",
    ]);
  });

  it("with a word between formulas: keeps the word upright and whole", () => {
    const [clause] = parseEquation("least Σ (y − ψ)²");
    expect(clause[0]).toEqual({ kind: "words", text: " least " });
    expect(JSON.stringify(parseEquation("t = M_rotor·o"))).not.toContain(" to ");
  });
});
