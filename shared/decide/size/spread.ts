import { answerOrNull } from "../../numeric/errors.ts";
import { scrambledSobol } from "../../numeric/sobol.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import { type Quantiles, quantilesOf } from "../spread.ts";
import { type Uncertainties, uncertainInputs } from "../uncertainInput.ts";
import type { Need, SizeBuild } from "./input.ts";
import { ratedAt } from "./rated.ts";
import { askedOf } from "./wound.ts";

/** A question whose numbers are uncertain. */
export interface SpreadAsked {
  /** the build whose numbers they are, nominal, SI */
  readonly input: AnyPredictInput;
  readonly uncertain: Uncertainties;
  /** the question that the present numbers of a copy make */
  readonly sizeOf: (copy: AnyPredictInput) => SizeBuild;
  readonly need: Need;
  /** [m], rising */
  readonly diameters: readonly number[];
  /** whether a size may be the best, one each */
  readonly keeps: readonly boolean[];
  /** 256 unless given */
  readonly samples?: number;
  /** 1 unless given */
  readonly seed?: number;
}

/** What one size takes, over what it takes nominally [-]. */
export interface RowSpread {
  readonly diameter: number;
  /** null where too few samples have a winding that does it */
  readonly packPower: Quantiles | null;
  readonly kv: Quantiles | null;
}

export interface SizeSpread {
  readonly rows: readonly RowSpread[];
  /** D that takes least among those that may be the best [m]; null where none may */
  readonly best: Quantiles | null;
  /** watts of the size that nominally takes least, over what it takes nominally [-] */
  readonly power: Quantiles | null;
  /** share of the samples in which some size that may be the best does it [-] */
  readonly done: number;
}

const [DEFAULT_SAMPLES, DEFAULT_SEED] = [256, 1];
/** Share of the samples that have to have an answer before a range is given. Judgement. */
const LEAST_SHARE = 0.9;

/** @returns D of the least of three neighbours' parabola, the middle one where they don't bend up [m] */
function vertex(x: readonly number[], y: readonly number[]): number {
  const [near, far] = [(y[1] - y[0]) / (x[1] - x[0]), (y[2] - y[1]) / (x[2] - x[1])];
  const bend = (far - near) / (x[2] - x[0]);
  if (!(bend > 0)) return x[1];
  const at = (x[0] + x[1]) / 2 - near / (2 * bend);
  return Math.min(x[2], Math.max(x[0], at));
}

/** The diameter of least watts, between the sizes where its neighbours may be the best too; NaN where none does it. */
function leastDiameter({ diameters, keeps }: SpreadAsked, power: readonly number[]): number {
  const open = power.map((each, i) => (keeps[i] && each > 0 ? each : Number.POSITIVE_INFINITY));
  const least = open.reduce((best, each, i) => (each < open[best] ? i : best), 0);
  if (!Number.isFinite(open[least])) return Number.NaN;
  const three = [least - 1, least, least + 1];
  if (!three.every((i) => Number.isFinite(open[i] ?? Number.POSITIVE_INFINITY))) return diameters[least];
  return vertex(
    three.map((i) => diameters[i]),
    three.map((i) => open[i]),
  );
}

/** Quantiles of those samples that have a number; null where too many have none. */
function knownQuantiles(samples: Float64Array): Quantiles | null {
  const known = samples.filter((value) => Number.isFinite(value));
  return known.length >= Math.max(2, LEAST_SHARE * samples.length) ? quantilesOf(known) : null;
}

interface Sampled {
  /** by diameter, over the nominal [-] */
  readonly power: readonly Float64Array[];
  readonly kv: readonly Float64Array[];
  readonly best: Float64Array;
}

/** A sample keeps the limits that its size keeps nominally. */
const NOTHING = {
  motor: { windingLimit: null, ratedVoltage: null, maxCurrent: null },
  cell: { maxCurrent: null, minimumVoltage: null },
  rotor: null,
} as const;

function ratedOver(asked: SpreadAsked, build: SizeBuild) {
  const need = answerOrNull(() => askedOf({ build, need: asked.need, allows: NOTHING, cell: null }));
  return asked.diameters.map((diameter) => need && answerOrNull(() => ratedAt(need, diameter)));
}

/** @returns what each size takes nominally */
function nominalOf(asked: SpreadAsked) {
  return ratedOver(asked, asked.sizeOf(structuredClone(asked.input)));
}

function sampled(asked: SpreadAsked, nominal: ReturnType<typeof nominalOf>): Sampled {
  const { samples = DEFAULT_SAMPLES, seed = DEFAULT_SEED, diameters } = asked;
  const copy = structuredClone(asked.input);
  const inputs = uncertainInputs(copy, asked.uncertain);
  const dimensions = inputs.reduce((sum, input) => sum + input.dimensions, 0);
  const uniform = scrambledSobol(samples, Math.max(1, dimensions), seed);
  const independent = new Float64Array(Math.max(1, dimensions));
  const column = () => new Float64Array(samples).fill(Number.NaN);
  const into = { power: diameters.map(column), kv: diameters.map(column), best: column() };
  for (let i = 0; i < samples; i++) {
    let place = 0;
    for (const { write, dimensions: taken } of inputs) {
      write(uniform, i * dimensions + place, independent);
      place += taken;
    }
    const rated = ratedOver(asked, asked.sizeOf(copy));
    rated.forEach((row, k) => {
      into.power[k][i] = (row?.packPower ?? Number.NaN) / (nominal[k]?.packPower ?? Number.NaN);
      into.kv[k][i] = (row?.kv ?? Number.NaN) / (nominal[k]?.kv ?? Number.NaN);
    });
    into.best[i] = leastDiameter(
      asked,
      rated.map((row) => row?.packPower ?? Number.NaN),
    );
  }
  return into;
}

/**
 * What the uncertainty of a build's numbers makes of its sizes: of the watts and winding of each, and of which one is the best.
 *
 *     x by scrambled Sobol points; each sample sized in closed form by {@link ratedAt}; D of least watts by the parabola through three sizes
 *
 * @param asked - the question, what is uncertain in it, sizes [m] and which of them may be the best; samples and seed [-]
 * @returns 5, 50 and 95 % of watts and K_v over their nominal ones [-], of the best diameter [m]
 * @throws {OutOfRangeError} as {@link uncertainInputs}
 *
 * Valid for limits that a size keeps or not nominally. A size at the end of those that may be the best stays there in every sample that would go on. Source: docs/method/size.md
 */
export function sizeSpread(asked: SpreadAsked): SizeSpread {
  const { diameters } = asked;
  const nominal = nominalOf(asked);
  const { power, kv, best } = sampled(asked, nominal);
  const at = leastDiameter(
    asked,
    nominal.map((row) => row?.packPower ?? Number.NaN),
  );
  const off = diameters.map((diameter) => Math.abs(diameter - at));
  const nearest = off.indexOf(Math.min(...off));
  return {
    rows: diameters.map((diameter, k) => ({
      diameter,
      packPower: knownQuantiles(power[k]),
      kv: knownQuantiles(kv[k]),
    })),
    best: knownQuantiles(best),
    power: Number.isFinite(at) ? knownQuantiles(power[nearest]) : null,
    done: best.filter((value) => Number.isFinite(value)).length / best.length,
  };
}
