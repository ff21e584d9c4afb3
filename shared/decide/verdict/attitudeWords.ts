/** Steepness beyond the wall is an overhang. */
const WALL = 90;
const CEILING = 180;
/** Attitudes this close are the same one to a reader [°]. */
export const SAME_ANGLE = 0.5;

/** @returns what the worst attitude is called */
export function worstName(angle: number): string {
  if (Math.abs(angle - WALL) < SAME_ANGLE) return "the wall";
  if (Math.abs(angle - CEILING) < SAME_ANGLE) return "the ceiling";
  if (angle < SAME_ANGLE) return "the floor";
  return angle > WALL ? "the overhang" : "the slope";
}

/** @returns words in a row: "wall, ceiling and roof" */
export function listed(words: readonly string[], joint = "and"): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} ${joint} ${words.at(-1)}`;
}

/** So many attitudes are named in a sentence, of more the first three. */
const NAMED = 5;
const FIRST = 3;

/** @returns names of attitudes in a row; of many, the first and how many others: "the wall, the ceiling, the roof and 9 other attitudes" */
export function listedAttitudes(names: readonly string[], joint = "and"): string {
  if (names.length <= NAMED) return listed(names, joint);
  return listed([...names.slice(0, FIRST), `${names.length - FIRST} other attitudes`], joint);
}
