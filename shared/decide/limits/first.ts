import { formatFixed, formatQuantity } from "../../units/format.ts";
import type { Limit, LimitKey } from "./limit.ts";
import type { OverVoltage } from "./overVoltage.ts";
import type { RotorFigures } from "./rotor.ts";
import type { WarmUp } from "./warmUp.ts";

/** What fails first, and one sentence that says it. */
export interface First {
  readonly key: LimitKey | null;
  /** from switching on, cold [s]; 0 as soon as it runs; null where no time belongs to it */
  readonly time: number | null;
  readonly sentence: string;
}

const MINUTE = 60;
const PERCENT = 100;
/** Seconds are said up to so many [s]. */
const SECONDS = 120;

const SUBJECT: Readonly<Record<LimitKey, string>> = {
  winding: "the winding",
  "motor-voltage": "the motor's voltage",
  "motor-current": "the motor's current",
  "cell-current": "the current of a cell",
  "cell-voltage": "the cell's voltage",
  "rotor-speed": "the rotor's speed",
};

/** What burns or bursts by itself; a voltage is a cause, and acts through these. */
const HURTS = ["rotor-speed", "motor-current", "cell-current", "winding"] as const;
const BEYOND: Readonly<Record<(typeof HURTS)[number], string>> = {
  winding: "The winding settles above its limit: the motor burns first",
  "motor-current": "The motor draws more than its maker allows: it is the first to burn",
  "cell-current": "The cells give more than their maker allows: they are the first to burn",
  "rotor-speed": "The rotor turns faster than it should be run: it is the first to burst",
};

/** @returns a time as a sentence says it: "48 s", "3.4 min" */
export function timeInWords(time: number): string {
  if (time < 1) return "less than a second";
  return time < SECONDS ? `${time.toFixed(0)} s` : `${formatFixed(time / MINUTE, 1)} min`;
}

function burns(limit: Limit | undefined, warm: WarmUp | null): First | null {
  if (!limit || limit.limit === null || limit.verdict !== "beyond") return null;
  const at = formatQuantity(limit.limit, "temperature", { decimals: 0 });
  const time = warm?.timeToLimit ?? null;
  const when = time === null ? "if it is left running" : `after ${timeInWords(time)} from cold`;
  return { key: "winding", time, sentence: `The winding reaches ${at} ${when}: the motor burns first.` };
}

function bursts({ factor }: RotorFigures): First | null {
  if (factor === null || factor >= 1) return null;
  const share = `${(PERCENT * factor).toFixed(0)} %`;
  const sentence = `The rotor reaches its strength at ${share} of this speed: it bursts first, while it runs up.`;
  return { key: "rotor-speed", time: 0, sentence };
}

function unknownOf(limits: readonly Limit[]): string {
  const open = limits.filter(({ verdict }) => verdict === "unknown").map(({ key }) => SUBJECT[key]);
  if (open.length === 0) return "";
  const last = open.length > 1 ? ` and ${open[open.length - 1]}` : "";
  const rest = (last ? open.slice(0, -1) : open).join(", ");
  return ` Not judged for want of data: ${rest}${last}.`;
}

function nearest(limits: readonly Limit[]): First {
  const known = HURTS.flatMap((key) => {
    const limit = limits.find((each) => each.key === key);
    return limit && limit.ratio !== null ? [{ key, ratio: limit.ratio }] : [];
  });
  if (known.length === 0)
    return {
      key: null,
      time: null,
      sentence: "What burns or bursts first can't be said: no limit is known.",
    };
  const most = known.reduce((a, b) => (b.ratio > a.ratio ? b : a));
  if (most.ratio > 1) return { key: most.key, time: null, sentence: `${BEYOND[most.key]}.` };
  const share = `${(PERCENT * most.ratio).toFixed(0)} %`;
  const sentence = `Nothing burns or bursts: nearest is ${SUBJECT[most.key]}, ${share} of the way to its limit.`;
  return { key: most.key, time: null, sentence };
}

/** @returns what an over-voltage does, in numbers: "At 2.00 × the rated voltage: pressure × 4.0, heat × 7.6." */
export function overVoltageInWords({ ratio, of, pressureRatio, heatRatio }: OverVoltage): string {
  return `At ${formatFixed(ratio, 2)} × the motor's rated voltage: ${of} × ${formatFixed(pressureRatio, 2)}, heat in the winding × ${formatFixed(heatRatio, 2)}.`;
}

/**
 * What burns or bursts first.
 *
 *     a rotor beyond its strength, while it runs up;  a winding beyond its limit, by its time;  else the limit nearest to 1
 *
 * @param limits - each judged [-]
 * @param figures - of the rotor [-]
 * @param warm - the winding from cold [s]; null where it isn't known
 * @param over - the same build at the rated voltage [-]; null where it isn't known
 * @returns what, after what time [s], and a sentence that also names an over-voltage and what could not be judged
 *
 * Valid at the build's charge, held. Source: docs/method/limits.md
 */
export function firstOf(
  limits: readonly Limit[],
  figures: RotorFigures,
  warm: WarmUp | null,
  over: OverVoltage | null,
): First {
  const winding = limits.find(({ key }) => key === "winding");
  const first = bursts(figures) ?? burns(winding, warm) ?? nearest(limits);
  const law = over && over.ratio > 1 ? ` ${overVoltageInWords(over)}` : "";
  return { ...first, sentence: first.sentence + law + unknownOf(limits) };
}
