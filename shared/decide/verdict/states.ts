/** What a build comes to, worst first. */
export const VERDICT_STATES = [
  "bursts",
  "burns",
  "falls",
  "over-rating",
  "tight",
  "unsure",
  "holds",
] as const;
export type VerdictState = (typeof VERDICT_STATES)[number];

/** How bad a state is, for a colour that always comes with a shape and a word. */
export type Tone = "bad" | "near" | "good";

const TONES: Readonly<Record<VerdictState, Tone>> = {
  bursts: "bad",
  burns: "bad",
  falls: "bad",
  "over-rating": "near",
  tight: "near",
  unsure: "near",
  holds: "good",
};

/** @returns the tone of a state */
export function toneOf(state: VerdictState): Tone {
  return TONES[state];
}

/** @returns 0 for the worst state, more for each better one [-] */
export function rankOf(state: VerdictState): number {
  return VERDICT_STATES.indexOf(state);
}

/** @returns whether rotor or motor do not last, so that margins beside it are never reached or soon lost */
export function isDestroyed(state: VerdictState): boolean {
  return state === "bursts" || state === "burns";
}
