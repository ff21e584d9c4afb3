import type { Build } from "../../../shared/model/build.ts";
import { parseNumber } from "../../../shared/units/number.ts";

export type Attitude = Build["attitudes"][number];

const CEILING = 180;
/** As the model takes them. */
const MOST_LETTERS = 120;
const MOST_ATTITUDES = 12;
const ALLOWED = "allowed: 0° (floor) to 180° (ceiling), for example “153.5”.";

/**
 * Reads an inclination.
 *
 * @param text - degrees, "°" may follow
 * @returns the angle [°], or a message that names what was read, what is allowed and an example
 */
export function readAngle(text: string): { readonly angle: number } | { readonly problem: string } {
  const trimmed = text.trim();
  if (trimmed === "") return { problem: `Nothing was typed; ${ALLOWED}` };
  const angle = parseNumber(trimmed.replace(/\s*(°|deg|degrees)$/i, ""));
  if (angle === null) return { problem: `Read “${trimmed}”, which is no angle here; ${ALLOWED}` };
  if (!(angle >= 0 && angle <= CEILING)) return { problem: `Read “${trimmed}”; ${ALLOWED}` };
  return { angle };
}

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
