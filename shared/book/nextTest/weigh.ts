import { withMass } from "../mass/withMass.ts";
import type { Asked, Planned } from "./planned.ts";

/** A scale that shows whole grams, as a standard uncertainty: ½ g either way, over √3 [kg]. */
const GRAM_SCALE = 0.0005 / Math.sqrt(3);

/** @returns the vehicle on a scale; null where its mass is known as well already */
export function plannedWeighing({ book, ...asked }: Asked): Planned | null {
  const build = withMass(book, asked.build);
  const stated = build.uncertainty["vehicle.mass"];
  if (stated === undefined || stated <= GRAM_SCALE) return null;
  return {
    key: "weigh",
    kind: null,
    title: `Weigh ${build.name}`,
    takes: "a scale that shows grams, everything on board; a minute",
    book,
    build: { ...build, uncertainty: { ...build.uncertainty, "vehicle.mass": GRAM_SCALE } },
  };
}
