import { deviationOf, type Spread } from "../../../shared/decide/spread.ts";
import type { AttitudeUncertainty } from "../../../shared/decide/uncertainty.ts";
import { inUnit } from "../../../shared/units/format.ts";
import { headed } from "../../../shared/units/showing.ts";
import { type Cell, known, type Table } from "../../ui/table.ts";
import { firstInWords } from "../../ui/verdictWords.ts";
import { inGrams } from "./attitudeWords.ts";
import type { Rose } from "./rose.ts";
import type { Need, Stand } from "./stand.ts";

const STEP = 5;
const PERCENT = 100;

/** A margin has the digits that its samples leave it, where it was sampled. */
function cells(need: Need, sure: Spread | null): Cell[] {
  const pull = Number.isFinite(need.pull) ? inGrams(need.pull) : "no pull suffices";
  const margin = need.margin === null ? null : known(need.margin, sure && deviationOf(sure));
  return [pull, margin, need.modes.length > 0 ? firstInWords(need.modes) : "no pull needed"];
}

/** @returns what Attitudes draws, as numbers: the named attitudes, then every fifth degree */
export function roseTable({ named, stands, made, spread, pull }: Rose): Table {
  const gives = pull.giving !== null;
  const gap = (need: Need) => (need.gap === null ? null : inUnit(need.gap, "length"));
  const pullKnownTo = spread && inGrams(deviationOf({ p5: spread.less, p95: spread.more }));
  const load = (newtons: number) => known(inGrams(newtons), pullKnownTo);
  const row = (title: string, stand: Stand, sure: AttitudeUncertainty | null = null) => [
    title,
    stand.angle,
    load(made),
    spread ? load(spread.less) : null,
    spread ? load(spread.more) : null,
    ...cells(stand.parked, sure?.parked ?? null),
    ...cells(stand.driving, sure?.driving ?? null),
    ...(gives ? [gap(stand.parked), gap(stand.driving)] : []),
    sure && PERCENT * sure.parked.holds,
    sure && PERCENT * sure.driving.holds,
  ];
  return {
    columns: [
      "attitude",
      "angle, °",
      headed("made", "load"),
      headed("made at 5 %", "load"),
      headed("made at 95 %", "load"),
      headed("needed parked", "load"),
      "margin parked",
      "first, parked",
      headed("needed driving", "load"),
      "margin driving",
      "first, driving",
      ...(gives
        ? [headed("gap at the limit parked", "length"), headed("gap at the limit driving", "length")]
        : []),
      "chance of holding parked, %",
      "chance of holding driving, %",
    ],
    rows: [
      ...named.map(({ title, stand, sure }) => row(title, stand, sure)),
      ...stands.filter((stand) => stand.angle % STEP === 0).map((stand) => row("", stand)),
    ],
  };
}
