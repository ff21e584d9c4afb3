import { listed } from "../../../shared/decide/verdict/attitudeWords.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import { isDestroyed } from "../../../shared/decide/verdict/states.ts";
import { stateWords } from "../../../shared/decide/verdict/words.ts";
import type { Cell as Saved, Table } from "../../ui/table.ts";
import { massText } from "../mass/massWords.ts";
import { duration } from "../rundown/rundownWords.ts";
import type { Row, RowGroup } from "./rows/row.ts";
import type { Column } from "./useColumn.ts";

/** A figure by which one build is better than the others. */
interface Merit {
  readonly of: (column: Column) => number | null;
  readonly most: boolean;
  readonly words: (value: number) => string;
}

const MERITS: readonly Merit[] = [
  {
    of: ({ verdict }) => verdict?.least?.margin ?? null,
    most: true,
    words: (margin) => `has the most margin where it is tightest, ${marginText(margin)}`,
  },
  {
    of: ({ headroom }) => headroom.mass,
    most: false,
    words: (mass) => `is the lightest, ${massText(mass)}`,
  },
  {
    of: ({ run }) => run?.end.time ?? null,
    most: true,
    words: (time) => `runs longest, ${duration(time)}`,
  },
];

/** Who is best by a figure, in words; nothing where two are, as far as the words tell. */
function bestBy({ of, most, words }: Merit, columns: readonly Column[]): string[] {
  const known = columns.flatMap((column) => {
    const value = of(column);
    return value === null ? [] : [{ letter: column.letter, value }];
  });
  const [best, second] = known.sort((a, b) => (most ? b.value - a.value : a.value - b.value));
  if (!best || !second || words(best.value) === words(second.value)) return [];
  return [`${best.letter} ${words(best.value)}`];
}

/** @returns which build is best at what; those that don't last, or have no numbers, are named and left out of it */
export function compareSentence(columns: readonly Column[]): string {
  const out = columns.filter(({ verdict }) => verdict && isDestroyed(verdict.state));
  const unknown = columns.filter(({ verdict, problems }) => !verdict && problems.length === 0);
  const standing = columns.filter(({ verdict }) => verdict && !isDestroyed(verdict.state));
  const merits = MERITS.flatMap((merit) => bestBy(merit, standing));
  return [
    ...out.map(({ letter, verdict }) => `${letter} ${verdict ? stateWords(verdict) : ""}.`),
    ...(unknown.length > 0
      ? [`Of ${listed(unknown.map(({ letter }) => letter))} not enough is known yet.`]
      : []),
    ...(merits.length > 0 ? [`${merits.join("; ")}.`] : []),
  ].join(" ");
}

const headed = ({ title, unit }: Row): string => (unit === "" ? title : `${title}, ${unit}`);

/** A row's own figures, then what more is known of each, a line for each. */
function savedRows(row: Row): Saved[][] {
  const more = new Set(row.cells.flatMap((cell) => Object.keys(cell?.more ?? {})));
  return [
    [headed(row), ...row.cells.map((cell) => cell?.saved ?? null)],
    ...[...more].map((key) => [
      `${row.title}: ${key}`,
      ...row.cells.map((cell) => cell?.more?.[key] ?? null),
    ]),
  ];
}

/** @returns the comparison for a file: a line for each figure, a column for each build */
export function comparedTable(columns: readonly Column[], groups: readonly RowGroup[]): Table {
  return {
    columns: ["Figure", ...columns.map(({ letter, name }) => `${letter}: ${name}`)],
    rows: groups.flatMap(({ rows }) => rows.flatMap(savedRows)),
  };
}
