import { keepsLimits } from "../../../shared/decide/size/size.ts";
import type { RowSpread, SizeSpread } from "../../../shared/decide/size/spread.ts";
import { inUnit } from "../../../shared/units/format.ts";
import { headed } from "../../../shared/units/showing.ts";
import { axisOver } from "../../charts/model/axis.ts";
import type { Band, Line, Plot, Region, Ring, Stop } from "../../charts/model/plot.ts";
import type { Panel } from "../../charts/stack.ts";
import type { Table } from "../../ui/table.ts";
import { type Answered, bestOf, type Sized } from "./answer.ts";
import { sizeText, stopOf } from "./sizeWords.ts";

const [MINUTE, SMALL, AXIS_NAME] = [60, 150, 22];
const sizeShown = (diameter: number) => inUnit(diameter, "length");
const [LEAST_MAIN, MOST_MAIN, SHAPE] = [290, 430, 0.5];
/** Watts far above the least are cut at the top instead of flattening the rest. */
const MOST_OVER_LEAST = 3;
const DASHES = ["6 3", "2 3", "12 3 2 3", "4 2 1 2"] as const;

const finite = (value: number | null): number => value ?? Number.NaN;
const powersOf = ({ rows }: Sized) =>
  rows.map(({ packPower }) => finite(packPower)).filter((power) => Number.isFinite(power));

/** Families whose sizes share one axis: rotors in a duct, or open propellers. */
const alike = ({ families }: Answered, { kind }: Sized): Sized[] =>
  families.filter((each) => each.kind === kind && each.rows.length > 0);

function topOf(families: readonly Sized[]): number {
  const all = families.flatMap(powersOf);
  const least = all.reduce((low, power) => Math.min(low, power), Number.POSITIVE_INFINITY);
  const most = all.reduce((high, power) => Math.max(high, power), 0);
  return all.length === 0 ? 1 : 1.05 * Math.min(most, MOST_OVER_LEAST * least);
}

function familyLine(sized: Sized, shown: Sized, i: number, top: number): Line {
  const own = sized.id === shown.id;
  return {
    key: sized.id,
    tone: own ? "rotor" : "quiet",
    style: own ? "solid" : { dash: DASHES[i % DASHES.length] },
    weight: own ? "heavy" : "normal",
    points: sized.rows.map(({ diameter, packPower }) => ({
      x: sizeShown(diameter),
      y: packPower !== null && packPower <= top ? packPower : Number.NaN,
    })),
    label: sized.name,
  };
}

/** Stretches of diameters that one thing stops, half-way to their neighbours. */
function stopRegions({ rows }: Sized, top: number): Region[] {
  const regions: Region[] = [];
  const edge = (i: number) => {
    const [a, b] = [rows[Math.max(0, i - 1)], rows[Math.min(rows.length - 1, i)]];
    return sizeShown((a.diameter + b.diameter) / 2);
  };
  let start = 0;
  for (let i = 1; i <= rows.length; i++) {
    const stop = stopOf(rows[start]);
    if (i < rows.length && stopOf(rows[i]) === stop) continue;
    const [from, to] = [edge(start), edge(i)];
    if (stop !== null && to > from)
      regions.push({
        key: `${stop} ${start}`,
        tone: "bad",
        outline: [
          { x: from, y: 0 },
          { x: from, y: top },
          { x: to, y: top },
          { x: to, y: 0 },
        ],
        name: { lines: [stop] },
      });
    start = i;
  }
  return regions;
}

function bestRings(families: readonly Sized[], top: number): Ring[] {
  return families.flatMap((sized) => {
    const best = bestOf(sized);
    if (!best || best.packPower === null || best.packPower > top) return [];
    return [
      {
        key: `best ${sized.id}`,
        x: sizeShown(best.diameter),
        y: best.packPower,
        look: "predicted",
        name: { lines: [sizeText(best.diameter)] },
      } as const,
    ];
  });
}

function stopsOf({ rows, id }: Sized, top: number): Stop[] {
  return rows.map(({ diameter, packPower }) => ({
    key: `${id} ${diameter}`,
    x: sizeShown(diameter),
    y: Math.min(top, packPower ?? top),
  }));
}

function xAxis({ rows, kind }: Sized) {
  const [from, to] = [sizeShown(rows[0].diameter), sizeShown(rows[rows.length - 1].diameter)];
  return {
    label: kind === "propeller" ? headed("propeller diameter", "length") : headed("rotor diameter", "length"),
    from,
    to: Math.max(to, from + 1e-3),
  };
}

type Ranged = "packPower" | "kv";

/** 5 to 95 % of the samples about a family's own line; cut at the top, broken where too few samples have an answer. */
function bandOf({ rows }: Sized, spread: SizeSpread | null, key: Ranged, top: number): Band[] {
  if (!spread) return [];
  const at = (each: RowSpread) => {
    const value = rows.find(({ diameter }) => diameter === each.diameter)?.[key] ?? Number.NaN;
    const { p5, p95 } = each[key] ?? { p5: null, p95: null };
    const [lo, hi] = [finite(p5) * value, Math.min(top, finite(p95) * value)];
    return { x: sizeShown(each.diameter), lo: lo < top ? lo : Number.NaN, hi };
  };
  return [{ key, tone: "rotor", strength: "mean", points: spread.rows.map(at) }];
}

function wattPlot(answered: Answered, shown: Sized, spread: SizeSpread | null): Plot {
  const families = alike(answered, shown);
  const top = topOf(families);
  const duty = shown.kind === "ducted" ? answered.duty : null;
  return {
    x: xAxis(shown),
    y: { label: "from the pack, W", from: 0, to: top },
    regions: stopRegions(shown, top),
    bands: bandOf(shown, spread, "packPower", top),
    lines: families.map((each, i) => familyLine(each, shown, i, top)),
    levels: duty
      ? [
          {
            key: "air",
            along: "x",
            at: duty.airPower,
            tone: "needed",
            style: "dots",
            label: { text: "in the air", short: "air" },
          },
        ]
      : [],
    rings: bestRings(families, top),
    stops: stopsOf(shown, top),
  };
}

interface Quantity {
  readonly key: string;
  readonly label: string;
  readonly value: (row: Sized["rows"][number]) => number;
}

const QUANTITIES: readonly Quantity[] = [
  { key: "kv", label: "winding wanted, rpm/V", value: ({ kv }) => finite(kv) },
  {
    key: "minutes",
    label: "holds from a full charge, min",
    value: ({ holdTime }) => finite(holdTime) / MINUTE,
  },
];

function quantityPanel(
  shown: Sized,
  { key, label, value }: Quantity,
  spread: SizeSpread | null,
  last: boolean,
): Panel {
  const points = shown.rows.map((row) => ({ x: sizeShown(row.diameter), y: value(row) }));
  const y = axisOver(
    label,
    points.map((point) => point.y),
    [0],
  );
  return {
    key,
    height: () => SMALL + (last ? AXIS_NAME : 0),
    plot: {
      x: xAxis(shown),
      y,
      bands: key === "kv" ? bandOf(shown, spread, key, y.to) : [],
      lines: [{ key, tone: "ink", style: "solid", weight: "fine", points }],
    },
  };
}

/** @returns watts of every family over the diameters, with what stops the one that is looked at; below, its winding and minutes */
export function panelsOf(answered: Answered, shown: Sized, spread: SizeSpread | null = null): Panel[] {
  const quantities = QUANTITIES.filter(({ value }) => shown.rows.some((row) => Number.isFinite(value(row))));
  return [
    {
      key: "watts",
      plot: wattPlot(answered, shown, spread),
      height: (width) => Math.round(Math.min(MOST_MAIN, Math.max(LEAST_MAIN, width * SHAPE))),
    },
    ...quantities.map((each, i) => quantityPanel(shown, each, spread, i === quantities.length - 1)),
  ];
}

/** @returns every size of every family, as numbers; how far the watts are known stands beside those that are shown */
export function sizeTable({ families }: Answered, shown: Sized, spread: SizeSpread | null): Table {
  const ratio = (id: string, diameter: number, end: "p5" | "p95") =>
    (id === shown.id && spread?.rows.find((row) => row.diameter === diameter)?.packPower?.[end]) || null;
  const range = (id: string, { diameter, packPower }: Sized["rows"][number], end: "p5" | "p95") => {
    const found = ratio(id, diameter, end);
    return found === null || packPower === null ? null : found * packPower;
  };
  return {
    columns: [
      "family",
      "kind",
      headed("diameter", "length"),
      headed("speed", "speed"),
      "winding wanted, rpm/V",
      "resistance, Ω",
      headed("suction", "pressure"),
      headed("flow", "flow"),
      "shaft, W",
      "pack, W",
      "pack at 5 %, W",
      "pack at 95 %, W",
      headed("winding", "temperature"),
      "bursting speed over its own",
      "minutes",
      "keeps every limit",
      "watch out",
    ],
    rows: families.flatMap(({ id, name, kind, rows }) =>
      rows.map((row) => [
        name,
        kind,
        sizeShown(row.diameter),
        row.speed === null ? null : inUnit(row.speed, "speed"),
        row.kv,
        row.resistance,
        row.pressure === null ? null : inUnit(row.pressure, "pressure"),
        row.flow === null ? null : inUnit(row.flow, "flow"),
        row.shaftPower,
        row.packPower,
        range(id, row, "p5"),
        range(id, row, "p95"),
        row.windingTemperature === null ? null : inUnit(row.windingTemperature, "temperature"),
        row.burstFactor,
        row.holdTime === null ? null : row.holdTime / MINUTE,
        keepsLimits(row) ? "yes" : "no",
        row.notes.map(({ message }) => message).join(" "),
      ]),
    ),
  };
}
