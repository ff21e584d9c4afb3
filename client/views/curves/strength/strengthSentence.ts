import { counted, inWords } from "../../../ui/count.ts";
import { capital, percent } from "../curveWords.ts";
import { nextTrials, type Strength } from "./strength.ts";

const HALVES = 0.5;

/**
 * Which trials to make next and what they would do.
 *
 * @param text - a value of the axis with its unit: "31.2°"
 * @returns "Nine more pulls in steps like these would halve the uncertainty of the median."
 */
export function strengthMissing(strength: Strength, text: (value: number) => string): string {
  const { fit, words, shown } = strength;
  if (!fit)
    return `Two or more ${words.one}s, in each of which one ${words.step} holds and a larger one does not.`;
  if (fit.common) {
    const [low, high] = fit.common;
    if (!(high > low)) return `Repeat with finer steps: the ${words.one}s show no scatter.`;
    const middle = text(shown((low + high) / 2));
    return `All ${words.one}s agree between ${text(shown(low))} and ${text(shown(high))}: one more that is stopped at ${middle} would halve that. Finer steps would show the scatter.`;
  }
  const next = nextTrials(strength);
  if (!next) return `More ${words.one}s in which one ${words.step} holds and a larger one does not.`;
  const { count, shrinks } = next;
  const gain = shrinks <= HALVES ? "halve" : `cut by ${percent(1 - shrinks)}`;
  const more = count === 1 ? `one more ${words.one}` : `${inWords(count)} more ${words.one}s`;
  return `${capital(more)} in steps like these would ${gain} the uncertainty of ${words.figure}.`;
}

/** @returns what the picture of the distribution shows, one sentence */
export function distributionSentence({ words, trials }: Strength, name: string): string {
  const used = trials.filter((trial) => !trial.aside).length;
  return `Share of ${words.one}s with ${name} that ${words.ends} up to a ${words.step}: the fitted distribution with its 95 % band, and the brackets of ${counted(used, words.one)}.`;
}
