import type { Build } from "../../model/build.ts";
import { DENSITIES } from "../../model/densities.ts";
import { MASS_GROUPS } from "../../model/massGroups.ts";
import {
  type Board,
  type Origin,
  type Row,
  subscript,
  type Working,
  workedOut,
} from "../../physics/working.ts";
import { formatShort } from "../../units/format.ts";
import type { Book } from "../book.ts";
import { balanceOf } from "./balance.ts";
import { ledgerOf, type MassBasis, type MassLine, sumOf } from "./ledger.ts";
import { weighInsOf } from "./weighedLines.ts";

/** Standard uncertainties either side of a figure that hold 90 % of a normal distribution [-]. */
export const Z90 = 1.645;

const LEDGER = "docs/method/mass.md";
const BAND = "± (90 %)";

type Numbered = readonly [line: MassLine, index: number];

const pieceSymbol = (i: number) => `m_piece${subscript(i + 1)}`;

function lineWorkings([line, i]: Numbered): Working[] {
  const { name, quantity, mass, uncertainty } = line;
  const whole = sumOf([line]);
  const pieces: Row = [["q", "pieces", ""], quantity];
  return [
    workedOut(
      {
        title: `mass of ${name}`,
        equation: "m = q·m_piece",
        output: [`m${subscript(i + 1)}`, "kg"],
        source: `definition; ${LEDGER}`,
      },
      [pieces, [[pieceSymbol(i), "one piece", "kg"], mass]],
      whole.value,
    ),
    workedOut(
      {
        title: `${BAND} of ${name}`,
        equation: "b = 1.645·q·u",
        output: [`b${subscript(i + 1)}`, "kg"],
        source: `90 % of a normal distribution; ${LEDGER}`,
        assumptions: ["Pieces of one line share one error."],
      },
      [pieces, [[`u${subscript(i + 1)}`, "standard uncertainty of one piece", "kg"], uncertainty]],
      Z90 * whole.uncertainty,
    ),
  ];
}

/** A sum of lines, and its band. */
function sumWorkings(what: string, lines: readonly Numbered[]): Working[] {
  const sum = sumOf(lines.map(([line]) => line));
  const rows = (symbol: string, of: (line: MassLine) => number) =>
    lines.map(([line, i]): Row => [[`${symbol}${subscript(i + 1)}`, line.name, "kg"], of(line)]);
  return [
    workedOut(
      { title: what, equation: "m = Σ m_i", output: ["m", "kg"], source: `sum; ${LEDGER}` },
      rows("m", (line) => sumOf([line]).value),
      sum.value,
    ),
    workedOut(
      {
        title: `${BAND} of ${what}`,
        equation: "b = √(Σ b_i²),  b_i = 1.645·q·u",
        output: ["b", "kg"],
        source: `errors independent of one another; ${LEDGER}`,
        assumptions: ["Each line was weighed or estimated by itself."],
      },
      rows("b", (line) => Z90 * sumOf([line]).uncertainty),
      Z90 * sum.uncertainty,
    ),
  ];
}

const BASIS: Readonly<Record<MassBasis, string>> = {
  weighed: "Weighed, as its record or the ledger says.",
  estimated: "Estimated.",
  missing: "Not weighed: counted as nothing.",
};

function drawnWords(build: Build, { of }: MassLine): string | null {
  const line = typeof of === "number" ? build.ledger[of] : undefined;
  if (!line?.made || line.mass !== undefined) return null;
  return `By its drawing: ${DENSITIES[line.made.material].name}, by volume or area and density.`;
}

function lineOrigins(book: Book, build: Build, [line, i]: Numbered): Origin[] {
  const weighIns = weighInsOf(book, build, line).map(({ id }) => id);
  const what = drawnWords(build, line) ?? BASIS[line.basis];
  return [
    { symbol: pieceSymbol(i), value: line.mass, what, tests: line.basis === "weighed" ? weighIns : [] },
    {
      symbol: `u${subscript(i + 1)}`,
      value: line.uncertainty,
      what: "Stated on its record; 15 % of an estimate that states none.",
      tests: [],
    },
  ];
}

function onBoardWorkings(book: Book, build: Build, lines: readonly Numbered[]): Working[] {
  const { whole, sum, unaccounted, mass } = ledgerOf(book, build);
  const sums = sumWorkings("sum of the lines", lines);
  const told = { title: "mass on board", output: ["m", "kg"] as const, source: `sum or scale; ${LEDGER}` };
  const of: Row = [["m", "sum of the lines", "kg"], sum.value];
  if (!whole || unaccounted === null)
    return [workedOut({ ...told, equation: "m = Σ m_i" }, [of], mass.value), ...sums];
  const typed: Row = [["m_whole", "typed for everything on board", "kg"], whole.value];
  return [
    workedOut({ ...told, equation: "m = m_whole" }, [typed], mass.value),
    workedOut(
      {
        title: "mass on no line",
        equation: "m_rest = m_whole − Σ m_i",
        output: ["m_rest", "kg"],
        source: `difference; ${LEDGER}`,
      },
      [typed, of],
      unaccounted,
    ),
    ...sums,
  ];
}

/**
 * How the masses of a build came about, line by line and as a whole.
 *
 *     m = whole, else Σ q·m;  b = 1.645·√Σ(q·u)²
 *
 * @param book - of its parts and tests
 * @param build - a stored build, or one changed by what-if settings
 * @returns workings of the total, of each group, of each line [kg], and where the lines' masses come from
 *
 * Valid and source: as {@link ledgerOf}
 */
export function massBoard(book: Book, build: Build): Board {
  const lines = ledgerOf(book, build).lines.map((line, i): Numbered => [line, i]);
  const groups = MASS_GROUPS.flatMap((group) => {
    const own = lines.filter(([line]) => line.group === group);
    return own.length > 0 ? sumWorkings(`sum of ${group}`, own) : [];
  });
  return {
    workings: [...onBoardWorkings(book, build, lines), ...groups, ...lines.flatMap(lineWorkings)],
    origins: lines.flatMap((line) => lineOrigins(book, build, line)),
  };
}

const ENDS = [
  ["fromRear", "x", "centre of gravity ahead of the rear axle"],
  ["height", "h", "centre of gravity over the surface"],
] as const;

/**
 * How the centre of gravity came about.
 *
 *     x = Σ m·x_i/Σ m, h = Σ m·h_i/Σ m over the lines with a place
 *
 * @param book - of its parts
 * @param build - a stored build, or one changed by what-if settings
 * @returns workings of both places [m]; none where no line has one
 *
 * Valid and source: as {@link balanceOf}
 */
export function balanceBoard(book: Book, build: Build): Board {
  const { lines, centre } = balanceOf(book, build);
  const masses = massBoard(book, build);
  if (!centre) return { workings: [], origins: [] };
  const workings = ENDS.map(([end, symbol, title]) =>
    workedOut(
      {
        title,
        equation: `${symbol} = (Σ m_i·${symbol}_i)/(Σ m_i)`,
        output: [symbol, "m"],
        source: "definition; docs/method/mass.md",
        assumptions: [
          "Each line is small beside its distance; what has no place stands at the centre of the others.",
        ],
      },
      lines.flatMap(({ name, mass, place }, i): Row[] =>
        place
          ? [
              [[`m${subscript(i + 1)}`, name, "kg"], mass],
              [[`${symbol}${subscript(i + 1)}`, `its place`, "m"], place[end]],
            ]
          : [],
      ),
      centre[end],
    ),
  );
  return { workings, origins: masses.origins };
}

/** What a build may weigh on one attitude, and what it weighs. */
export interface AllowedFigure {
  /** "the wall" */
  readonly name: string;
  /** θ [°] */
  readonly angle: number;
  /** margin that is wanted [-] */
  readonly target: number;
  /** as {@link allowedMasses} finds it [kg] */
  readonly allowed: number;
  /** on board [kg] */
  readonly mass: number;
  /** driving margin at that mass; null where no pull is needed [-] */
  readonly margin: number | null;
}

/** @returns workings of a mass that is allowed, and of what is left of it [kg] */
export function allowedWorkings({ name, angle, target, allowed, mass, margin }: AllowedFigure): Working[] {
  const onBoard: Row = [["m", "mass on board", "kg"], mass];
  const of = `on ${name} at ${formatShort(target, 2)} ×`;
  return [
    workedOut(
      {
        title: `mass allowed ${of}`,
        equation: "margin(m_allowed) = margin_wanted",
        output: ["m_allowed", "kg"],
        source: "root of the margin over the mass; docs/method/mass.md",
        assumptions: [
          "All else as it stands: the centre of gravity too. The lesser of parked and driving counts.",
        ],
      },
      [
        [["margin_wanted", "margin that is wanted", ""], target],
        [["θ", "inclination in degrees, 180 is a ceiling", ""], angle],
        ...(margin === null
          ? []
          : [[["margin", "margin with the mass on board, driving", ""], margin] as const]),
        onBoard,
      ],
      allowed,
    ),
    workedOut(
      {
        title: `mass left ${of}`,
        equation: "m_left = m_allowed − m",
        output: ["m_left", "kg"],
        source: "difference; docs/method/mass.md",
      },
      [[["m_allowed", "mass allowed", "kg"], allowed], onBoard],
      allowed - mass,
    ),
  ];
}
