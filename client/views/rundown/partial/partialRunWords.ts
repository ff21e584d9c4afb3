import { chargeText } from "../../../ui/chargeWords.ts";
import { type Known, leading } from "../../../ui/partial/known.ts";
import { grams, holdText, leadText, nothingText } from "../../../ui/partial/partialWords.ts";
import { duration } from "../rundownWords.ts";
import type { PartialRun } from "./run.ts";

function decapitalised(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** The minutes hang on nothing that is missing; what is held, on the friction alone. */
function lastingText(known: Known, { start, last, end }: PartialRun): string {
  if (end.time === 0) return "There is no run: the loaded cell is at its minimum from the start.";
  const falling = `its pull falls from ${grams(start.suction)} to ${grams(last.suction)}`;
  return `From ${chargeText(start.sample.charge)} it runs ${duration(end.time)} and ${falling}${holdText(known, last, " then")}`;
}

/**
 * What can be said of "how long does it hold?".
 *
 * @param known - of the build
 * @param run - where friction alone isn't known
 * @returns what is known first
 */
export function partialRunSentence(known: Known, run: PartialRun | null): string {
  if (run) return lastingText(known, run);
  const at = leading(known);
  if (!at) return nothingText(known);
  const lead = `${leadText(known, at)}${holdText(known, at)}`;
  if (known.cellMinimum === null) return `${lead} How many minutes can't be said.`;
  return `At the end of its charge, ${decapitalised(lead)} How many minutes until then can't be said.`;
}
