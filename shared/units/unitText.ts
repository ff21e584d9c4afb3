import { type Meaning, meaningsInAnyCase, meaningsOf, type Signature } from "./symbols.ts";

/** Ways of writing that stand for one another. */
const SAME: readonly (readonly [RegExp, string])[] = [
  [/[µμ\u039c]/g, "u"],
  [/\u2126/g, "Ω"],
  [/℃/g, "°C"],
  [/℉/g, "°F"],
  [/º/g, "°"],
  [/\bdeg\s*(?=[CF]\b)/gi, "°"],
  [/°\s+(?=[CF]\b)/g, "°"],
  [/″|”|“|''|′′/g, '"'],
  [/′|’/g, "'"],
  [/₂/g, "2"],
  [/²/g, "^2"],
  [/³/g, "^3"],
  [/⁻¹/g, "^-1"],
  [/⁻²/g, "^-2"],
  [/\*\*/g, "^"],
  [/[·⋅∙•×]/g, "*"],
  [/([a-z])-(?=[a-z])/gi, "$1*"],
  [/(mm|cm|in|")\s*(?:H2O|WC|WG|WS|Aq|water)(?![a-z0-9])/gi, "$1H2O"],
  [/"H2O/g, "inH2O"],
  [/\bsq\.?\s*([a-z]+)/gi, "$1^2"],
  [/\s+/g, " "],
];

const TOKEN = /\s*(?:((?:mm|cm|in)H2O|°[CK]?|[a-zΩ%]+|["'])(?:\^?(-?[1-4]))?(?![0-9^])|([*/()]))\s*/giy;

interface Power {
  readonly symbol: string;
  readonly exponent: number;
}

/** @returns a unit's text with one sign for each thing: "µN·m" → "uN*m" */
function unified(text: string): string {
  return SAME.reduce((said, [from, to]) => said.replace(from, to), text.trim());
}

type Token = Power | "*" | "/" | "(" | ")";

function tokensOf(text: string): Token[] | null {
  const tokens: Token[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const match = TOKEN.exec(text);
    if (!match) return null;
    const [, symbol, exponent = "1", sign] = match;
    tokens.push(symbol ? { symbol, exponent: Number(exponent) } : (sign as Token));
  }
  return tokens;
}

/**
 * The symbols of a unit with their exponents: what follows a stroke is divided by, until the next sign.
 *
 * @param text - "N m s/rad", "rad/(s V)", "kg/m³"
 * @returns null where it is no unit: a number or a sign of multiplication before it, a sign too many
 */
export function powersOf(text: string): readonly Power[] | null {
  const tokens = tokensOf(unified(text));
  if (!tokens || tokens.length === 0 || tokens[0] === "*") return null;
  const powers: Power[] = [];
  const under: number[] = [1];
  let sign = 1;
  let waits = false;
  for (const token of tokens) {
    const isSign = token === "*" || token === "/";
    if (isSign && waits) return null;
    if (token === "(") under.push(under[under.length - 1] * sign);
    else if (token === ")") {
      if (under.length < 2 || waits) return null;
      under.pop();
    } else if (!isSign) powers.push({ ...token, exponent: token.exponent * sign * under[under.length - 1] });
    sign = token === "/" ? -1 : 1;
    waits = isSign || token === "(";
  }
  return waits || under.length > 1 || powers.length === 0 ? null : powers;
}

const raised = ({ factor, signature }: Meaning, exponent: number): Meaning => ({
  factor: factor ** exponent,
  signature: signature.map((each) => each * exponent),
});

function times(a: Meaning, b: Meaning): Meaning {
  const length = Math.max(a.signature.length, b.signature.length);
  const signature = Array.from({ length }, (_, i) => (a.signature[i] ?? 0) + (b.signature[i] ?? 0));
  return { factor: a.factor * b.factor, signature };
}

export function sameSignature(a: Signature, b: Signature): boolean {
  const length = Math.max(a.length, b.length);
  return Array.from({ length }).every((_, i) => (a[i] ?? 0) === (b[i] ?? 0));
}

function combined(
  powers: readonly Power[],
  meanings: (symbol: string) => readonly Meaning[],
): readonly Meaning[] {
  return powers.reduce<readonly Meaning[]>(
    (found, { symbol, exponent }) =>
      found.flatMap((before) => meanings(symbol).map((meaning) => times(before, raised(meaning, exponent)))),
    [{ factor: 1, signature: [] }],
  );
}

/**
 * What a unit may mean.
 *
 * @param text - a unit as people write it, without a number
 * @param fits - which meanings are of the quantity that is asked for
 * @returns those as written; where none fits, those in any case; empty where it is no unit
 */
export function unitMeanings(text: string, fits: (meaning: Meaning) => boolean): readonly Meaning[] {
  const powers = powersOf(text);
  if (!powers) return [];
  const exact = combined(powers, meaningsOf).filter(fits);
  return exact.length > 0 ? exact : combined(powers, meaningsInAnyCase).filter(fits);
}
