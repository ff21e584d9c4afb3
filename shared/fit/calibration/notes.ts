import { chiSquareQuantile } from "../../numeric/chiSquare.ts";
import { normalQuantile } from "../../numeric/normalQuantile.ts";
import type { Note } from "../../physics/note.ts";
import { formatFixed, formatPlain } from "../../units/format.ts";
import { typedText } from "../../units/shown.ts";
import type { Belief, CalibrationPull, Checked, FactorBelief } from "./data.ts";
import type { LeakResidual, PullResidual } from "./residuals.ts";

/** Share of sound data that is called contradictory all the same [-]. */
const FALSE_ALARM = 0.01;
/** A posterior this many prior standard deviations off makes the prior doubtful [-]. Judgement. */
const DOUBTED = 3;
/** A posterior sd above this share of the prior's was hardly narrowed [-]. Judgement. */
const HARDLY = 0.9;

const digits = (value: number): string => formatPlain(value, 3);
const gapText = (metres: number): string => typedText(metres, "length", 3);
const loadText = (force: number): string => typedText(force, "load", 3);

/** Which end of a bracket all pulls lack. */
export type Side = "held" | "let-go" | "both";

/** @returns "held" where nothing let go, "let-go" where nothing held, "both" elsewhere */
export function sideOf(pulls: readonly CalibrationPull[]): Side {
  if (pulls.length === 0) return "both";
  if (pulls.every(({ letGo }) => letGo === null)) return "held";
  return pulls.every(({ held }) => held === 0) ? "let-go" : "both";
}

/** @returns notes on what the tests leave open, and the measurement that would close it */
export function coverageNotes(request: Checked, asked: number, tellsFriction: boolean): Note[] {
  const { pulls, leaks, prior } = request;
  const notes: Note[] = [];
  const note = (code: string, message: string) => notes.push({ code, message });
  const empty = asked - pulls.length;
  if (empty > 0) note("empty-pulls", `${empty} pulls without any load say nothing and were left out.`);
  if (pulls.length + leaks.length === 0)
    note(
      "no-data",
      `No test tells the gap: it keeps what was held true before, ${gapText(prior.gap.mean)} ± ${gapText(prior.gap.sd)}. Pull until it lets go, in five runs or more, or take a leak test.`,
    );
  if (!tellsFriction)
    note(
      "friction-not-told",
      `No pull along the surface tells the friction: it keeps what was held true before, ${digits(prior.friction.mean)} ± ${digits(prior.friction.sd)}. Pull along the surface until it slides.`,
    );
  const loads = pulls.map(({ held, letGo }) => letGo ?? held);
  const side = sideOf(pulls);
  if (side === "held")
    note(
      "all-held",
      `All pulls held, up to ${loadText(Math.max(...loads))}: the strength has no upper bound yet${leaks.length > 0 ? "" : ", so the gap may be anything narrower"}. Pull with larger loads until it lets go, in three runs or more.`,
    );
  if (side === "let-go")
    note(
      "all-let-go",
      `Every pull let go at once, down to ${loadText(Math.min(...loads))}: the strength has no lower bound yet${leaks.length > 0 ? "" : ", so the gap may be anything wider"}. Begin with smaller loads, in three runs or more.`,
    );
  return notes;
}

interface Found {
  readonly mean: number;
  readonly sd: number;
}

/** @returns notes where a prior was contradicted, or hardly changed although tests were there to change it */
export function priorNotes(
  name: string,
  prior: Belief,
  found: Found,
  show: (value: number) => string,
): Note[] {
  const away = Math.abs(found.mean - prior.mean) / prior.sd;
  if (away > DOUBTED)
    return [
      {
        code: "prior-doubted",
        message: `The tests put the ${name} at ${show(found.mean)}, ${formatFixed(away, 1)} standard uncertainties from the ${show(prior.mean)} held true before. Measure it by itself, or widen what is held true.`,
      },
    ];
  if (found.sd < HARDLY * prior.sd) return [];
  return [
    {
      code: "hardly-narrowed",
      message: `The tests hardly narrow the ${name}: ± ${show(found.sd)} against ± ${show(prior.sd)} before. Pull in finer steps, or more often.`,
    },
  ];
}

export const gapNotes = (prior: Belief, found: Found): Note[] => priorNotes("gap", prior, found, gapText);
export const frictionNotes = (prior: Belief, found: Found): Note[] =>
  priorNotes("friction", prior, found, digits);

/** @returns notes on the pull factor: its prior is a guess, so that only a surprise is worth a word */
export function factorNotes({ median, sd }: FactorBelief, { mean }: Found): Note[] {
  return priorNotes("pull factor", { mean: median, sd: median * sd }, { mean, sd: 0 }, digits);
}

/**
 * Tests that contradict each other or the model: at the most likely gap they lie further off than the stated scatter allows.
 *
 *     Σ deviation² against χ²(n, 99 %); the largest |deviation| against the normal's 1 % of n readings
 *
 * @param pulls - residuals of the pulls [-]
 * @param leaks - residuals of the leak readings [-]
 * @returns a note that names the readings furthest off; none where all agree
 *
 * Valid for independent readings; a prediction inside its bracket counts as no deviation, which makes it cautious. Source: χ² test; Bonferroni's inequality
 */
export function conflictNotes(pulls: readonly PullResidual[], leaks: readonly LeakResidual[]): Note[] {
  const named = [
    ...pulls.map(({ pull, deviation }) => ({ name: `pull ${pull + 1}`, deviation })),
    ...leaks.map(({ deviation }, i) => ({ name: `leak reading ${i + 1}`, deviation })),
  ];
  if (named.length === 0) return [];
  const sum = named.reduce((total, { deviation }) => total + deviation ** 2, 0);
  const limit = normalQuantile(1 - FALSE_ALARM / 2 / named.length);
  const odd = named.filter(({ deviation }) => Math.abs(deviation) > limit);
  if (odd.length === 0 && sum <= chiSquareQuantile(1 - FALSE_ALARM, named.length)) return [];
  const furthest = named.reduce((most, one) =>
    Math.abs(one.deviation) > Math.abs(most.deviation) ? one : most,
  );
  const names = (odd.length > 0 ? odd : [furthest]).map(
    ({ name, deviation }) => `${name} (${deviation > 0 ? "+" : "−"}${formatFixed(Math.abs(deviation), 1)})`,
  );
  const message = `The tests contradict each other or the model: ${names.join(", ")}, in stated scatters from the prediction. Repeat these, and check load, voltage, surface and shim.`;
  return [{ code: "conflict", message }];
}
