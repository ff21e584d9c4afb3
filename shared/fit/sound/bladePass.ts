import { OutOfRangeError, requirePositive } from "../../numeric/errors.ts";
import { peakBetween } from "./peak.ts";
import { levelAt, type Prominence, prominenceOf } from "./prominence.ts";
import type { Spectrum } from "./spectrum.ts";

/** Where the blade-passing frequency is looked for. */
export interface Heard {
  /** blades of the rotor */
  readonly blades: number;
  /** plausible speeds of the shaft [rad/s] */
  readonly from: number;
  readonly to: number;
  /** share by which the speed may change within the window, 1 % unless given */
  readonly spread?: number;
}

export interface BladePass {
  /** blade-passing frequency [Hz] */
  readonly frequency: number;
  /** its standard uncertainty, from the width of its peak [Hz] */
  readonly uncertainty: number;
  /** how far its harmonics stand above the noise, on average [dB] */
  readonly score: number;
  /** another sound as clear as this one that is none of its harmonics; null where there is none [Hz] */
  readonly other: number | null;
  /** what lines at the shaft's own rate say: of this blade count, of another one, or nothing */
  readonly shaft:
    | { readonly says: "agrees" }
    | { readonly says: "nothing" }
    | { readonly says: "other"; readonly blades: number };
}

/** Harmonics that are looked at; a duct's sound has few more above the noise. */
const HARMONICS = 5;
/** Beyond this share of the sampling rate a microphone's filter begins. */
const HIGHEST = 0.45;
/** Candidates lie so close that none of their harmonics falls between [lines]. */
const FINENESS = 0.2;
/** Less is no rotor: noise alone reaches about 8 dB at its best candidate. Judgement. [dB] */
const CLEAR = 10;
/** A candidate nearly as good as the best at a whole fraction of its frequency is the fundamental. Judgement. */
const NEARLY = 0.8;
/** Another sound counts from this share of the rotor's score on. Judgement. */
const ANOTHER = 0.75;
/** A shaft's line must stand out as much to be believed [dB] */
const SHAFT = 12;
const MOST_BLADES = 16;
/** Two frequencies are one another's multiples within this. */
const SAME = 0.01;

/** Mean prominence of the harmonics of a frequency, the low ones counting more [dB]. */
function scoreAt(levels: Prominence, highest: number, frequency: number): number {
  let [sum, weights] = [0, 0];
  for (let h = 1; h <= HARMONICS && h * frequency < highest; h++) {
    sum += levelAt(levels, h * frequency) / Math.sqrt(h);
    weights += 1 / Math.sqrt(h);
  }
  return weights === 0 ? 0 : sum / weights;
}

interface Candidate {
  readonly frequency: number;
  readonly score: number;
}

function candidates(levels: Prominence, highest: number, from: number, to: number): Candidate[] {
  const step = levels.step * FINENESS;
  const found: Candidate[] = [];
  for (let frequency = from; frequency <= Math.min(to, highest); frequency += step)
    found.push({ frequency, score: scoreAt(levels, highest, frequency) });
  return found;
}

const bestOf = (all: readonly Candidate[]): Candidate =>
  all.reduce((best, each) => (each.score > best.score ? each : best), { frequency: 0, score: 0 });

/** The lowest whole fraction of the best that scores nearly as well. */
function fundamental(all: readonly Candidate[], best: Candidate): Candidate {
  for (let m = HARMONICS; m >= 2; m--) {
    const wanted = best.frequency / m;
    const near = bestOf(all.filter(({ frequency }) => Math.abs(frequency / wanted - 1) < SAME / 2));
    if (near.score >= NEARLY * best.score) return near;
  }
  return best;
}

/** Lines beside a peak that still belong to it. */
const SKIRT = 3.5;

/** The prominence without a rotor's own lines: all multiples of a frequency. */
function without({ level, step }: Prominence, frequency: number): Prominence {
  const masked = level.slice();
  for (let h = 1; h * frequency < step * level.length; h++) {
    const reach = Math.max(SKIRT * step, (SAME / 2) * h * frequency);
    const [first, last] = [h * frequency - reach, h * frequency + reach].map((each) =>
      Math.round(each / step),
    );
    masked.fill(0, Math.max(0, first), last + 1);
  }
  return { level: masked, step };
}

/** Another sound as clear as the rotor's, once its own lines are taken out. */
function rivalOf(
  levels: Prominence,
  found: Candidate,
  highest: number,
  range: readonly [number, number],
): number | null {
  const left = candidates(without(levels, found.frequency), highest, ...range);
  const best = bestOf(left);
  return best.score >= Math.max(CLEAR, ANOTHER * found.score) ? fundamental(left, best).frequency : null;
}

/** The frequency from its harmonics, each by its peak; the narrowest for its order says how sure it is. */
function refined(
  spectrum: Spectrum,
  levels: Prominence,
  highest: number,
  { frequency, spread }: Pick<Candidate, "frequency"> & { readonly spread: number },
): Pick<BladePass, "frequency" | "uncertainty"> {
  let [sum, weights, uncertainty] = [0, 0, Number.POSITIVE_INFINITY];
  for (let h = 1; h <= HARMONICS && h * frequency < highest; h++) {
    if (levelAt(levels, h * frequency) < CLEAR) continue;
    const reach = Math.max(2 * spectrum.step, spread * h * frequency);
    const peak = peakBetween(spectrum, h * frequency - reach, h * frequency + reach);
    if (!peak) continue;
    const own = peak.halfWidth / h / Math.sqrt(3);
    sum += peak.frequency / h / own ** 2;
    weights += 1 / own ** 2;
    uncertainty = Math.min(uncertainty, own);
  }
  return weights === 0
    ? { frequency, uncertainty: spectrum.step }
    : { frequency: sum / weights, uncertainty };
}

/** What the shaft's own rate and its multiples say of the blade count [dB]. */
function shaftLevel(levels: Prominence, frequency: number, blades: number): number {
  const orders = [1, 2, 3].filter((order) => order < blades);
  return orders.length === 0
    ? 0
    : orders.reduce((sum, order) => sum + levelAt(levels, (order * frequency) / blades), 0) / orders.length;
}

function shaftSays(levels: Prominence, frequency: number, blades: number): BladePass["shaft"] {
  const own = shaftLevel(levels, frequency, blades);
  if (own >= SHAFT) return { says: "agrees" };
  const others = Array.from({ length: MOST_BLADES - 2 }, (_, i) => i + 3)
    .filter((count) => count !== blades)
    .map((count) => ({ count, level: shaftLevel(levels, frequency, count) }));
  const loudest = others.reduce((best, each) => (each.level > best.level ? each : best), {
    count: 0,
    level: 0,
  });
  return loudest.level >= SHAFT ? { says: "other", blades: loudest.count } : { says: "nothing" };
}

/**
 * Blade-passing frequency in a rotor's sound: the frequency whose harmonics stand highest above the noise, then its peaks.
 *
 *     f = Z n;  u(f) = half width at half power of a harmonic's peak over its order, over √3
 *
 * @param spectrum - of the sound [Hz]
 * @param heard - blade count and plausible speeds of the shaft [rad/s]
 * @returns frequency with its standard uncertainty [Hz]; null where no rotor is heard
 * @throws {OutOfRangeError} on a blade count below 1, speeds that are no range
 *
 * Valid for one rotor whose speed changes by few per cent in the window; of two, the other is named. Source: docs/method/sound.md
 */
export function findBladePass(spectrum: Spectrum, heard: Heard): BladePass | null {
  const { blades, from, to } = heard;
  if (!(blades >= 1 && Number.isInteger(blades)))
    throw new OutOfRangeError("blades", blades, "a whole number, 1 or more");
  requirePositive("from", from);
  if (!(to > from)) throw new OutOfRangeError("to", to, `greater than ${from}`);
  const levels = prominenceOf(spectrum);
  const highest = (spectrum.power.length - 1) * 2 * spectrum.step * HIGHEST;
  const perSpeed = blades / (2 * Math.PI);
  const range = [Math.max(from * perSpeed, 3 * spectrum.step), to * perSpeed] as const;
  const all = candidates(levels, highest, ...range);
  const best = bestOf(all);
  if (best.score < CLEAR) return null;
  const found = fundamental(all, best);
  const exact = refined(spectrum, levels, highest, { ...found, spread: heard.spread ?? SAME });
  const shaft = shaftSays(levels, exact.frequency, blades);
  // where the shaft is heard, its multiples are the rotor's own as well
  const own = shaft.says === "agrees" ? exact.frequency / blades : exact.frequency;
  return {
    ...exact,
    score: found.score,
    other: rivalOf(levels, { ...found, frequency: own }, highest, range),
    shaft,
  };
}
