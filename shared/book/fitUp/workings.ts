import { chancesOf } from "../../decide/fitUp/chance.ts";
import type { Stack } from "../../decide/fitUp/stack.ts";
import {
  type Board,
  type Origin,
  type Row,
  subscript,
  type Told,
  type Working,
  workedOut,
} from "../../physics/working.ts";
import { dimensionsOf, type FitStack, type StackLine } from "./fitStack.ts";
import { PART_SIZES } from "./partSizes.ts";

const DOC = "docs/method/fit-up.md";
const HANDBOOK = "Drake (ed.), Dimensioning and Tolerancing Handbook (1999) ch. 9";
const LINE = "Sizes along one line, made independently of one another, each centred in its tolerance.";

type Known = StackLine & { readonly nominal: number };

const nominalSymbol = (i: number) => `L${subscript(i + 1)}`;
const toleranceSymbol = (i: number) => `t${subscript(i + 1)}`;

function nominals(lines: readonly Known[]): Row[] {
  return lines.map(({ name, sense, quantity, nominal }, i): Row => {
    const times = quantity > 1 ? `, ${quantity} pieces` : "";
    return [[nominalSymbol(i), `${name}, ${sense > 0 ? "opens" : "fills"}${times}`, "m"], nominal];
  });
}

const tolerances = (lines: readonly Known[]): Row[] =>
  lines.flatMap(({ name, tolerance }, i): Row[] =>
    tolerance > 0 ? [[[toleranceSymbol(i), `tolerance of ${name}`, "m"], tolerance]] : [],
  );

function lengthWorkings(name: string, stack: Stack, lines: readonly Known[]): Working[] {
  const left: Row = [["c", "left, as drawn", "m"], stack.clearance];
  const range = (told: Omit<Told, "output" | "assumptions">, [low, high]: readonly [number, number]) =>
    workedOut({ ...told, output: ["c", "m"], assumptions: [LINE] }, [left, ...tolerances(lines)], low, high);
  return [
    workedOut(
      {
        title: `left in ${name}`,
        equation: "c = Σ s·q·L",
        output: ["c", "m"],
        source: `sum, s = 1 for what opens and −1 for what fills; ${DOC}`,
      },
      nominals(lines),
      stack.clearance,
    ),
    range(
      {
        title: `worst case of ${name}`,
        equation: "c ± Σ q·t",
        source: `every size at its end at once; ${HANDBOOK}; ${DOC}`,
      },
      stack.worstCase,
    ),
    range(
      {
        title: `root-sum-square of ${name}`,
        equation: "c ± √(Σ q·t²)",
        source: `errors that seldom add up; ${HANDBOOK}; ${DOC}`,
      },
      stack.rss,
    ),
  ];
}

function chanceWorkings(name: string, stack: Stack, lines: readonly Known[]): Working[] {
  const { normal, uniform } = chancesOf(lines);
  const rows: Row[] = [[["c", "left, as drawn", "m"], stack.clearance], ...tolerances(lines)];
  const told = { output: ["P", ""] as const, source: `${HANDBOOK}; ${DOC}` };
  return [
    workedOut(
      {
        ...told,
        title: `chance that ${name} closes`,
        equation: "P = Φ(3c/√(Σ q·t²))",
        assumptions: [LINE, "Errors normal, a tolerance three standard deviations."],
      },
      rows,
      normal,
    ),
    workedOut(
      {
        ...told,
        title: `chance that ${name} closes, errors spread evenly`,
        equation: "P = k/n,  n = 8192",
        assumptions: [
          LINE,
          "Every error anywhere in its tolerance alike; counted over the same evenly spread samples each time.",
        ],
      },
      rows,
      uniform,
    ),
  ];
}

const BASIS = { drawn: "as drawn", measured: "measured", free: "room that must stay" } as const;

function originsOf(lines: readonly Known[]): Origin[] {
  return lines.flatMap(({ of, basis, nominal, tolerance }, i) => {
    const from = of === null ? "Typed in the stack" : `On the ${PART_SIZES[of].part}'s record`;
    return [
      { symbol: nominalSymbol(i), value: nominal, what: `${from}, ${BASIS[basis]}.`, tests: [] },
      {
        symbol: toleranceSymbol(i),
        value: tolerance,
        what: `Half of the range it is made in; ${BASIS[basis]}, unless typed.`,
        tests: [],
      },
    ];
  });
}

/**
 * How the figures of a stack came about.
 *
 *     c = Σ s·q·L;  worst case c ± Σ q·t;  RSS c ± √Σ q·t²;  chances
 *
 * @param fit - a stack of a build [m]
 * @returns workings of what is left [m] and of both chances [-], down to the sizes; none where a size isn't known
 *
 * Valid and source: as {@link stackOf} and {@link chancesOf}
 */
export function stackBoard({ name, stack, lines }: FitStack): Board {
  if (!stack || dimensionsOf(lines) === null) return { workings: [], origins: [] };
  const known = lines as readonly Known[];
  return {
    workings: [...lengthWorkings(name, stack, known), ...chanceWorkings(name, stack, known)],
    origins: originsOf(known),
  };
}
