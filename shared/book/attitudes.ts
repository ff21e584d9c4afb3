import type { Build } from "../model/build.ts";

const WALL = 90;
const CEILING = 180;

/** An attitude that a build must hold. */
export interface NamedAttitude {
  /** as a table says it: "Roof pane" */
  readonly title: string;
  /** as a sentence says it: "the roof pane" */
  readonly name: string;
  /** [°] */
  readonly angle: number;
}

/** @returns a name inside a sentence: "Roof pane" is "roof pane", "LED strip" stays */
export function decapitalised(name: string): string {
  return /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}

/** @returns the ceiling, the wall, then the user's own; one that repeats the wall's or ceiling's angle stands behind its name. */
export function namedAttitudes(build: Pick<Build, "attitudes">): NamedAttitude[] {
  const own = (angle: number) =>
    build.attitudes.filter((each) => each.angle === angle).map((each) => each.name);
  const standard = (title: string, angle: number): NamedAttitude => {
    const also = own(angle);
    return {
      title: also.length > 0 ? `${title} (${also.join(", ")})` : title,
      name: `the ${title.toLowerCase()}`,
      angle,
    };
  };
  const others = build.attitudes
    .filter((each) => each.angle !== WALL && each.angle !== CEILING && each.angle !== 0)
    .map((each) => ({ title: each.name, name: `the ${decapitalised(each.name)}`, angle: each.angle }));
  return [standard("Ceiling", CEILING), standard("Wall", WALL), ...others];
}
