import { placeAt } from "../../decide/numberAt.ts";
import { type Quantiles, type Spread, shareError } from "../../decide/spread.ts";
import {
  DEFAULT_SAMPLES,
  DEFAULT_SEED,
  type Share,
  type StatedUncertainty,
} from "../../decide/uncertainty.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import { type Board, type Row, subscript, type Working, workedOut } from "../../physics/working.ts";
import type { Resolved } from "../resolve/resolved.ts";
import type { BuildUncertainty } from "./collector.ts";
import { shareTitle, type UncertaintyPart, uncertaintyParts } from "./parts.ts";

/** What was sampled, and what came of it. */
export interface Sampling {
  readonly input: AnyPredictInput;
  readonly resolved: Resolved;
  readonly asked: StatedUncertainty;
  readonly sources: BuildUncertainty["sources"];
  readonly shares: readonly Share[];
}

/** A figure that was sampled. */
export interface SampledFigure {
  /** "the margin at 90°, parked" */
  readonly what: string;
  readonly symbol: string;
  /** SI unit; "" for a pure number */
  readonly unit: string;
  readonly at: Quantiles;
  /** share of the samples that hold; of a margin only [-] */
  readonly holds?: number;
}

const SOURCE = "docs/method/uncertainty.md";
const QUANTILES = "order statistics between neighbours, type 7 of Hyndman & Fan (1996)";
/** As many contributions as a band or a chance names. */
const GREATEST = 6;
const SAMPLED = [
  "Every uncertain number is drawn anew for each sample, normal about its value and cut at what is possible, and the sample predicted in full.",
  "Shares are of the variance of the driving margin on the tightest attitude.",
];

/** SI units of the numbers that paths end in; those of no unit are left out. */
const UNITS: Readonly<Record<string, string>> = {
  gap: "m",
  area: "m²",
  perimeter: "m",
  land: "m",
  diameter: "m",
  cgHeight: "m",
  cgFromRear: "m",
  track: "m",
  mass: "kg",
  kv: "rpm/V",
  resistance: "Ω",
  driverResistance: "Ω",
  cellResistance: "Ω",
  wireResistance: "Ω",
  thermalResistance: "K/W",
  frictionTorque: "N·m",
  viscousTorque: "N·m·s",
  openCircuitVoltage: "V",
  auxCurrent: "A",
  verticalStiffness: "N/m",
  gapLoad: "N",
  temperature: "K",
  pressure: "Pa",
};

const pathsOf = (parts: readonly UncertaintyPart[]) => parts.flatMap(({ paths }) => paths);

const unitOf = (path: string) => UNITS[path.slice(path.lastIndexOf(".") + 1)] ?? "";

/** How the number that a path leads to is known: the tests that it stands on. */
function testsBehind(resolved: Resolved, path: string): readonly string[] {
  const { rotor, thrust, motor, pack, gap, leak, friction, skirtFriction, calibration } = resolved;
  const ofCalibration = calibration?.testIds ?? [];
  if (path.startsWith("rotor.")) return (rotor ?? thrust)?.testIds ?? [];
  if (path.startsWith("motor.")) return motor?.testIds ?? [];
  if (path.startsWith("pack.")) return pack?.testIds ?? [];
  if (path === "skirt.gap") return gap.testIds;
  if (path === "vehicle.wheelFriction") return friction?.testIds ?? [];
  if (path === "vehicle.skirtFriction") return skirtFriction?.testIds ?? [];
  if (path === "vehicle.pullFactor") return ofCalibration;
  return path.startsWith("skirt.") ? (leak?.testIds ?? []) : [];
}

/** Several numbers may have one value: each has a symbol of its own. */
const symbolOf = (all: readonly string[], path: string) => subscript(all.indexOf(path) + 1);

function pathRows({ input, asked }: Sampling, path: string, all: readonly string[]): Row[] {
  const below = symbolOf(all, path);
  const value = placeAt(input, path)?.value;
  const unit = unitOf(path);
  const sd = asked.uncertainty[path];
  const factor = asked.logNormal?.[path];
  return [
    ...(value === undefined ? [] : [[[`x${below}`, path, unit], value] as const]),
    ...(sd === undefined ? [] : [[[`s${below}`, `standard uncertainty of ${path}`, unit], sd] as const]),
    ...(factor === undefined
      ? []
      : [[[`s${below}`, `standard uncertainty of ln ${path}`, ""], factor] as const]),
  ];
}

function partWorking(of: Sampling, parts: readonly UncertaintyPart[], i: number): Working {
  const { what, share, paths } = parts[i];
  return workedOut(
    {
      title: shareTitle(what),
      equation: `S${subscript(i + 1)} = r(x, y)² + r(h, y)²,  h = x² less its straight line in x`,
      output: [`S${subscript(i + 1)}`, ""],
      source: `first-order share of the variance, by the samples themselves; ${SOURCE}`,
      assumptions: [
        "Numbers of one source count together; y is the driving margin on the tightest attitude.",
      ],
    },
    [...new Set(paths)].flatMap((path) => pathRows(of, path, pathsOf(parts))),
    share,
  );
}

function samplingRows({ asked }: Sampling): Row[] {
  return [
    [["n", "samples, evenly spread (scrambled Sobol points)", ""], asked.samples ?? DEFAULT_SAMPLES],
    [["seed", "the same one each time", ""], asked.seed ?? DEFAULT_SEED],
  ];
}

const partRows = (parts: readonly UncertaintyPart[]): Row[] =>
  parts.map(({ what, share }, i) => [[`S${subscript(i + 1)}`, `share of: ${what}`, ""], share]);

/** Null where one of its ends needs no pull. */
function bandWorking(
  of: Sampling,
  { what, symbol, unit, at }: SampledFigure,
  parts: readonly UncertaintyPart[],
): Working | null {
  const { p5, p50, p95 } = at;
  if (p5 === null || p95 === null) return null;
  const median: Row[] = p50 === null ? [] : [[[`${symbol}_50`, "median of the samples", unit], p50]];
  return workedOut(
    {
      title: `5 to 95 % of ${what}`,
      equation: `${symbol}_q = y_i + f·(y_j − y_i),  i + f = q·(n − 1),  j = i + 1`,
      output: [symbol, unit],
      source: `${QUANTILES}; ${SOURCE}`,
      assumptions: [...SAMPLED, "y are the samples, the least first; between its ends lie 90 % of them."],
    },
    [...samplingRows(of), ...median, ...partRows(parts)],
    p5,
    p95,
  );
}

function chanceWorking(
  of: Sampling,
  { what, holds }: SampledFigure,
  parts: readonly UncertaintyPart[],
): Working | null {
  if (holds === undefined) return null;
  const count = of.asked.samples ?? DEFAULT_SAMPLES;
  return workedOut(
    {
      title: `chance of holding: ${what}`,
      equation: "P = k/n,  s_P = √(p(1 − p)/(n + 3)),  p = (k + 1)/(n + 2)",
      output: ["P", ""],
      source: `share of the samples with a margin of 1 or more; ${SOURCE}`,
      assumptions: SAMPLED,
    },
    [
      ...samplingRows(of),
      [["k", "samples that hold", ""], Math.round(holds * count)],
      [["s_P", "sampling error, at most", ""], shareError(holds, count)],
      ...partRows(parts),
    ],
    holds,
  );
}

/** @returns a margin that was sampled, as {@link sampledBoard} takes it */
export function sampledMargin(angle: number, state: "parked" | "driving", spread: Spread): SampledFigure {
  const what = `the margin at ${angle.toFixed(0)}°, ${state}`;
  return { what, symbol: "margin", unit: "", at: spread, holds: spread.holds };
}

/**
 * What the bands and the chances of a sampled build are made of.
 *
 *     quantiles and shares of the samples, contributions, each down to its standard uncertainty and its tests
 *
 * @param of - what was sampled, and the shares that came of it [SI]
 * @param figures - quantiles of each [SI]
 * @returns a working for each band and each chance, which name the greatest contributions, then one for each contribution [SI]
 *
 * Valid and source: as {@link uncertaintyOf}
 */
export function sampledBoard(of: Sampling, figures: readonly SampledFigure[]): Board {
  const parts = uncertaintyParts(of.shares, of.sources);
  const greatest = parts.slice(0, GREATEST);
  const bands = figures.flatMap((figure) => [
    bandWorking(of, figure, greatest) ?? [],
    chanceWorking(of, figure, greatest) ?? [],
  ]);
  const all = pathsOf(parts);
  const origins = parts.flatMap(({ what, paths }) =>
    paths.flatMap((path) => {
      const value = placeAt(of.input, path)?.value;
      const tests = testsBehind(of.resolved, path);
      return value === undefined
        ? []
        : [{ symbol: `x${symbolOf(all, path)}`, value, what: `By ${what}.`, tests }];
    }),
  );
  return { workings: [...bands.flat(), ...parts.map((_, i) => partWorking(of, parts, i))], origins };
}
