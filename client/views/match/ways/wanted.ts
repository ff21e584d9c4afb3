import { signal } from "@preact/signals";
import type { Wanted } from "../../../../shared/decide/wanted.ts";
import { attitudeRows, type Outcome } from "../../../state/outcome.ts";

/** An attitude to ask about. */
export interface Choice {
  readonly attitude: Wanted["attitude"];
  /** as the menu says it: "Roof pane 153°" */
  readonly label: string;
  /** as a sentence says it: "the roof pane" */
  readonly name: string;
}

/** What Ways to hold and What moves the margin are about. */
export const wanted = signal<Wanted>({ attitude: "worst", mode: "parked" });

/** @returns the worst attitude, then the ceiling, the wall and the user's own */
export function choicesOf(outcome: Outcome): Choice[] {
  const worst: Choice = { attitude: "worst", label: "Worst attitude", name: "the worst attitude" };
  const named = attitudeRows(outcome).map(({ title, name, angle }) => ({
    attitude: angle,
    label: `${title} ${angle.toFixed(0)}°`,
    name,
  }));
  return [worst, ...named];
}

/** @returns what is asked about this build: as chosen, the worst where the build has no such attitude */
export function wantedOf(outcome: Outcome, chosen: Wanted): Wanted {
  const known = choicesOf(outcome).some(({ attitude }) => attitude === chosen.attitude);
  return known ? chosen : { ...chosen, attitude: "worst" };
}

/** @returns what is asked, in words: "the wall, driving" */
export function wantedWords(outcome: Outcome, { attitude, mode }: Wanted): string {
  const name =
    choicesOf(outcome).find((choice) => choice.attitude === attitude)?.name ?? "the worst attitude";
  return mode === "driving" ? `${name}, driving` : name;
}
