import type { TestKind } from "../../../../shared/model/tests/index.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { conversionOf } from "../../../../shared/units/readUnit.ts";
import { KINDS } from "../record/kinds.ts";
import { IGNORE, OPEN, type Role, SET_ASIDE, TEST } from "./roles.ts";

/** Words that say a column is about a reading's uncertainty or another instrument, not the reading. */
const BESIDE = /^(samples?|count|stderr|se|sd|std|err|error|raw|adc|venturi|total|unc|uncertainty)$/;
/** Words before the reading's own name. */
const BEFORE = /^(air|motor|static|shaft|fan|rotor|cavity|load|pack|cell|tilt|angle)$/;

const OTHERS: Readonly<Record<string, Role>> = {
  open: OPEN,
  setaside: SET_ASIDE,
  test: TEST,
  title: TEST,
  titel: TEST,
};

const UNIT_SPELLINGS: Readonly<Record<string, string>> = {
  m3s: "m³/s",
  "m3/s": "m³/s",
  "m^3/s": "m³/s",
  m3h: "m³/h",
  "m3/h": "m³/h",
  lpm: "L/min",
  lmin: "L/min",
  "l/min": "L/min",
  lps: "L/s",
  ls: "L/s",
  "l/s": "L/s",
  rps: "rev/s",
  "1/s": "rev/s",
  "1/min": "rpm",
  kgm3: "kg/m³",
  "kg/m3": "kg/m³",
  "kg/m^3": "kg/m³",
  nm: "N·m",
  mnm: "mN·m",
};

const wordsOf = (header: string): string[] =>
  header
    .replace(/[[(].*$/, "")
    .split(/[^\p{L}\p{N}/^°%]+/u)
    .filter(Boolean);

const isUnit = (unit: string, name: DimensionName): boolean => conversionOf(name, unit) !== null;

/** Words of a header that may be a unit. The first is the reading's own name ("p", "V") unless it can't be that. */
function unitWords(header: string): string[] {
  const [first = "", ...others] = wordsOf(header).filter((word) => !/^\d/.test(word));
  return /^rp[ms]$|^m?ah$/i.test(first) ? [...others.toReversed(), first] : others.toReversed();
}

const spelled = (word: string): string => UNIT_SPELLINGS[word.toLowerCase()] ?? word;

/** @returns what stands in a header's brackets */
function bracketsOf(header: string): string[] {
  return [...header.matchAll(/[[(]\s*([^\])]+?)\s*[\])]/g)].map(([, inside]) => inside);
}

/** @returns the unit that a header names, "dp [kPa]" or "p_static_kPa"; null where it names none of that quantity */
export function unitIn(header: string, name: DimensionName): string | null {
  const brackets = bracketsOf(header);
  const candidates =
    brackets.length === 0
      ? unitWords(header).map(spelled)
      : brackets.flatMap((unit) => [unit, spelled(unit)]);
  return candidates.find((unit) => isUnit(unit, name)) ?? null;
}

/** @returns what a header has in brackets where that is no unit of the quantity, "stone"; null where it is one or nothing is */
export function strangeUnit(header: string, name: DimensionName): string | null {
  return unitIn(header, name) === null ? (bracketsOf(header).at(-1) ?? null) : null;
}

const joined = (words: readonly string[]): string => words.join("").toLowerCase();

/** @returns by what a header may call it, each of a kind's columns */
function namesOf(kind: TestKind): ReadonlyMap<string, Role> {
  const own = KINDS[kind].columns.flatMap(({ key, label, inList = key, names = [] }) =>
    [key.toLowerCase(), joined(label.split(/\s+/)), inList.toLowerCase(), ...names].map(
      (name): [string, Role] => [name, key],
    ),
  );
  return new Map([...Object.entries(OTHERS), ...own]);
}

/** The longest beginning of a header that names a column: "let go g" is "let go". */
function roleAtStart(words: readonly string[], names: ReadonlyMap<string, Role>): Role | null {
  for (let count = words.length; count > 0; count--) {
    const role = names.get(joined(words.slice(0, count)));
    if (role !== undefined) return role;
  }
  return null;
}

/** @returns what a column is, as its header says */
export function roleOf(header: string, kind: TestKind): Role {
  const words = wordsOf(header).map((word) => word.toLowerCase());
  const names = namesOf(kind);
  const whole = names.get(joined(words));
  if (whole !== undefined) return whole;
  if (words.length === 0 || words.slice(1).some((word) => BESIDE.test(word))) return IGNORE;
  const found = roleAtStart(words, names);
  if (found !== null) return found;
  return (BEFORE.test(words[0]) && roleAtStart(words.slice(1), names)) || IGNORE;
}

/** @returns true where a header speaks of a value that was set, not read */
export function isNominal(header: string): boolean {
  return wordsOf(header).some((word, i, all) => /^(nominal|nom|set)$/i.test(word) && all[i + 1] !== "aside");
}
