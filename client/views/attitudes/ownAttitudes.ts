import type { Build } from "../../../shared/model/build.ts";
import { BUILD } from "../../../shared/model/limits.ts";
import type { NumberSpec } from "../../../shared/units/readNumber.ts";

export type Attitude = Build["attitudes"][number];

/** As the model takes them. */
const MOST_LETTERS = 120;
const MOST_ATTITUDES = 12;

/** 0° floor, 90° wall, 180° ceiling. */
export const INCLINATION = {
  dimension: "inclination",
  limits: BUILD.attitudes.angle,
  example: "153.5°",
} as const satisfies NumberSpec;

/** @returns what is wrong with a new attitude's name, or null */
export function nameProblem(name: string, attitudes: readonly Attitude[]): string | null {
  const trimmed = name.trim();
  if (trimmed === "") return "A name is needed, for example “Roof pane”.";
  if (trimmed.length > MOST_LETTERS)
    return `Read ${trimmed.length} letters; allowed: up to ${MOST_LETTERS}, for example “Roof pane”.`;
  if (attitudes.some((each) => each.name === trimmed))
    return `“${trimmed}” is one of its attitudes already; another name is needed, for example “${trimmed} 2”.`;
  if (attitudes.length >= MOST_ATTITUDES)
    return `A build takes ${MOST_ATTITUDES} attitudes of its own; remove one first.`;
  return null;
}

/** @returns the build with one attitude more */
export function withAttitude(build: Build, { name, angle }: Attitude): Build {
  return { ...build, attitudes: [...build.attitudes, { name: name.trim(), angle }] };
}
