/** A piece of an equation, as MathML stacks it. */
export type Piece =
  | { readonly kind: "name" | "number" | "sign" | "words"; readonly text: string }
  | { readonly kind: "script"; readonly base: Piece; readonly sub: string; readonly sup: readonly Piece[] }
  | { readonly kind: "fraction"; readonly over: readonly Piece[]; readonly under: readonly Piece[] }
  | { readonly kind: "root"; readonly of: readonly Piece[] }
  | { readonly kind: "group"; readonly open: string; readonly close: string; readonly of: readonly Piece[] };

/** Names of more than one letter; any other run of Latin letters is a product of single ones. */
const NAMES = ["Re", "ln", "max", "min", "log", "sin", "cos", "tan", "margin", "jet", "strength"];
/** Words between formulas. */
const WORDS = ["least", "mean", "median", "prior", "from", "of", "to"];
const TOKEN = new RegExp(
  [
    String.raw`\d+(?:\.\d+)?`,
    "Δ[a-zA-Z]",
    NAMES.join("|"),
    String.raw`(?:${WORDS.join("|")})\b`,
    "[A-Za-zα-ωΑ-Ωℓ]",
    "[½¼]",
    "[²³⁴⁵⁺]",
    "[₀-₉ₐ]+",
    String.raw`_[A-Za-z]+\d*|_\d+`,
    String.raw`\S`,
  ].join("|"),
  "gu",
);
const VULGAR: Readonly<Record<string, readonly [string, string]>> = { "½": ["1", "2"], "¼": ["1", "4"] };
const RAISED: Readonly<Record<string, string>> = { "²": "2", "³": "3", "⁴": "4", "⁵": "5", "⁺": "+" };
const CLOSE: Readonly<Record<string, string>> = { "(": ")", "[": "]" };
/** Two words of three letters or more in a row are a sentence, not a formula. */
const PROSE = /[a-z]{3,}[ ,:]+(?:[a-z]+ )*[a-z]{2,}/;

const isOperand = (piece: Piece | undefined): piece is Piece =>
  piece !== undefined && piece.kind !== "sign" && piece.kind !== "words";
/** What ends a numerator: sums, relations, commas; products don't. */
const isProduct = (piece: Piece) => piece.kind !== "sign" || piece.text === "·";

function lowered(text: string): string {
  const plain = text.startsWith("_") ? text.slice(1) : text;
  return plain.replace(/[₀-₉]/g, (digit) => String("₀₁₂₃₄₅₆₇₈₉".indexOf(digit))).replace("ₐ", "a");
}

/** Reads one clause: a formula without the comma after it. */
class Reader {
  private at = 0;
  constructor(private readonly tokens: readonly string[]) {}

  /** Everything up to a closing bracket, or to the end. */
  sequence(close: string | null = null): Piece[] {
    const pieces: Piece[] = [];
    while (this.at < this.tokens.length && this.tokens[this.at] !== close) {
      const token = this.tokens[this.at];
      if (token === "/") this.fraction(pieces);
      else pieces.push(this.scripted());
    }
    this.at += 1;
    return pieces;
  }

  /** What was multiplied so far goes over what follows without a sign. */
  private fraction(before: Piece[]): void {
    this.at += 1;
    let from = before.length;
    while (from > 0 && isProduct(before[from - 1])) from -= 1;
    const over = before.splice(from);
    const under = [this.scripted()];
    while (under[0].kind !== "group" && this.isJuxtaposed()) under.push(this.scripted());
    before.push({ kind: "fraction", over: bare(over), under: bare(under) });
  }

  private isJuxtaposed(): boolean {
    const next = this.tokens[this.at];
    return next !== undefined && /^[A-Za-zα-ωΑ-Ωℓ]/u.test(next);
  }

  /** A piece with what stands below and above it. */
  private scripted(): Piece {
    const base = this.primary();
    let [sub, sup]: [string, Piece[]] = ["", []];
    for (;;) {
      const token = this.tokens[this.at] ?? "";
      if (isOperand(base) && /^(?:_|[₀-₉ₐ])/.test(token)) sub = lowered(this.next());
      else if (isOperand(base) && RAISED[token]) sup = [{ kind: "number", text: RAISED[this.next()] }];
      else if (isOperand(base) && token === "^") {
        this.at += 1;
        sup = [...bare([this.primary()])];
      } else break;
    }
    return sub === "" && sup.length === 0 ? base : { kind: "script", base, sub, sup };
  }

  private primary(): Piece {
    const token = this.next();
    if (CLOSE[token])
      return { kind: "group", open: token, close: CLOSE[token], of: this.sequence(CLOSE[token]) };
    if (token === "√") return { kind: "root", of: bare([this.scripted()]) };
    if (VULGAR[token]) {
      const [over, under] = VULGAR[token].map((text): Piece[] => [{ kind: "number", text }]);
      return { kind: "fraction", over, under };
    }
    if (/^\d/.test(token)) return { kind: "number", text: token };
    if (WORDS.includes(token)) return { kind: "words", text: ` ${token} ` };
    return { kind: /^[\p{L}Δ]/u.test(token) ? "name" : "sign", text: token };
  }

  private next(): string {
    const token = this.tokens[this.at] ?? "";
    this.at += 1;
    return token;
  }
}

/** What stands alone over or under a line, or under a root, needs no round brackets. */
function bare(pieces: readonly Piece[]): readonly Piece[] {
  const [only, ...others] = pieces;
  return others.length === 0 && only?.kind === "group" && only.open === "(" ? only.of : pieces;
}

/**
 * Reads an equation as the workings write it in one line: "F = κ·Δp·(A + σ·P·ℓ)".
 *
 * @returns its clauses, each a row of pieces; one in words stays as it is
 */
export function parseEquation(text: string): Piece[][] {
  return text.split(/(?<=[,;]) {2}|(?<=;) /).map((clause) => {
    if (PROSE.test(clause)) return [{ kind: "words", text: clause }];
    return new Reader(clause.match(TOKEN) ?? []).sequence();
  });
}
