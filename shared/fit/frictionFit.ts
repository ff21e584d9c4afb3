import { NotEnoughDataError, OutOfRangeError, requireNonNegative } from "../numeric/errors.ts";
import { normalQuantile } from "../numeric/normalQuantile.ts";
import type { Note } from "../physics/note.ts";
import { formatDigits } from "../units/format.ts";
import { fitCensored, type Interval } from "./censoredFit.ts";
import type { Bracket } from "./censoredLikelihood.ts";

/** One slide on a tilt board. */
export interface Slide {
  /** steepest tilt that held; null where the board was raised steadily until it slid, 0 where it slid at the first step [rad] */
  readonly held: number | null;
  /** tilt at which it slid; null where the board was stopped before [rad] */
  readonly slid: number | null;
}

export interface FrictionFitRequest {
  readonly slides: readonly Slide[];
  /** standard uncertainty of the tilt, 0 unless given [rad] */
  readonly angleUncertainty?: number;
}

export interface FrictionFit {
  /** μ [-] */
  readonly mu: number;
  /** standard uncertainty of μ, the tilt's included; null where the slides show none [-] */
  readonly uncertainty: number | null;
  /** of single slides; 0 where none is seen [-] */
  readonly sd: number;
  /** 95 % of μ without the tilt's own uncertainty: by profile likelihood, or all that the brackets share; null where open [-] */
  readonly interval: Interval | null;
  readonly warnings: readonly Note[];
}

/** Below it the scatter is known badly. Common practice, no source. */
const FEW_SLIDES = 5;
const TWO_SIDED_95 = normalQuantile(0.975);

/**
 * Friction from a tilt board: the tangent of the tilt at which it slides.
 *
 *     μ = tan θ;  μ ∈ [tan held, tan slid] a slide, normal over the slides by interval-censored maximum likelihood; u² = u²(mean) + (1 + μ²)²u²(θ)
 *
 * @param request - slides: tilt held, tilt slid [rad]; standard uncertainty of the tilt [rad]
 * @returns μ with its standard uncertainty and 95 % interval [-], sd of single slides [-], notes
 * @throws {OutOfRangeError} naming `slides.i` on a tilt outside 0…90°, held above slid
 * @throws {NotEnoughDataError} where nothing slid, or nothing held
 *
 * Valid with the fan off and the load as in use; a slid tilt without a held one counts as read at the moment of sliding.
 * Brackets that all share a value: μ is the middle of it, u = half of it over √3. Source: Coulomb friction; JCGM 100:2008 (GUM), 4.3.7; {@link fitCensored}
 */
export function fitFriction(request: FrictionFitRequest): FrictionFit {
  const tilt = requireNonNegative("angleUncertainty", request.angleUncertainty ?? 0);
  const brackets = request.slides.flatMap((slide, i) => bracketOf(slide, `slides.${i}`));
  const low = Math.max(...brackets.map((b) => b.low));
  const high = Math.min(...brackets.map((b) => b.high));
  requireBothSides(low, high);
  const empty = request.slides.length - brackets.length;
  const fit = low <= high ? sharedRange(low, high) : scattered(brackets);
  const ofTilt = (1 + fit.mu ** 2) * tilt;
  const uncertainty =
    fit.uncertainty === null && ofTilt === 0 ? null : Math.hypot(fit.uncertainty ?? 0, ofTilt);
  return { ...fit, uncertainty, warnings: notesFor(fit, brackets.length, empty) };
}

function bracketOf({ held, slid }: Slide, path: string): Bracket[] {
  for (const [name, angle] of [
    ["held", held],
    ["slid", slid],
  ] as const)
    if (angle !== null && !(angle >= 0 && angle < Math.PI / 2))
      throw new OutOfRangeError(`${path}.${name}`, angle, "0 up to, but not, 90° (π/2)");
  if (held !== null && slid !== null && held > slid)
    throw new OutOfRangeError(`${path}.held`, held, `up to the tilt at which it slid, ${slid}`);
  if (slid === null && (held === null || held === 0)) return [];
  const high = slid === null ? Number.POSITIVE_INFINITY : Math.tan(slid);
  if (held === null) return [{ low: high, high, count: 1 }];
  return [{ low: held === 0 ? Number.NEGATIVE_INFINITY : Math.tan(held), high, count: 1 }];
}

function requireBothSides(low: number, high: number): void {
  if (high === Number.POSITIVE_INFINITY)
    throw new NotEnoughDataError(
      low > 0 ? `It never slid: μ is ${formatDigits(low, 3)} or more.` : "No slide was read.",
      "Tilt further until it slides, in three runs or more.",
      "slides",
    );
  if (low === Number.NEGATIVE_INFINITY)
    throw new NotEnoughDataError(
      `It slid at the first step each time: μ is ${formatDigits(high, 3)} or less.`,
      "Begin flatter and raise the board in smaller steps.",
      "slides",
    );
}

type Core = Omit<FrictionFit, "warnings">;

function sharedRange(low: number, high: number): Core {
  const uncertainty = high > low ? (high - low) / 2 / Math.sqrt(3) : null;
  return {
    mu: (low + high) / 2,
    uncertainty,
    sd: 0,
    interval: uncertainty === null ? null : [low, high],
  };
}

function scattered(brackets: readonly Bracket[]): Core {
  const { mean, sd, meanInterval } = fitCensored(brackets);
  const uncertainty = meanInterval && (meanInterval[1] - meanInterval[0]) / 2 / TWO_SIDED_95;
  return { mu: mean, uncertainty, sd, interval: meanInterval };
}

function notesFor(fit: Core, slides: number, empty: number): Note[] {
  const notes: Note[] = [];
  const note = (code: string, message: string) => notes.push({ code, message });
  if (empty > 0) note("empty-slides", `${empty} slides without a tilt say nothing and were left out.`);
  if (slides === 1) note("single-slide", "One slide shows no scatter. Repeat it three times or more.");
  else if (fit.sd === 0)
    note("no-scatter-seen", "The slides show no scatter: it is below the steps of the tilt.");
  if (slides > 1 && slides < FEW_SLIDES)
    note("few-slides", `${slides} slides: the uncertainty is rough. Five or more make it trustworthy.`);
  if (fit.sd > 0 && fit.interval === null)
    note(
      "interval-open",
      "The slides set no end to μ. Add runs that hold at one tilt and slide at a steeper.",
    );
  return notes;
}
