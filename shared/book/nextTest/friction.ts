import type { FrictionTest } from "../../model/tests/friction.ts";
import { findById } from "../book.ts";
import { type Asked, type Planned, plannedHead, scatter, withTest } from "./planned.ts";

const SLIDES = 6;
/** What single slides scatter by [-]. Judgement. */
const SCATTER = 0.04;
/** Half of the bracket between held and slid [°]. Judgement. */
const HALF_BRACKET = 0.5;
const STEEPEST = 89;

const degrees = (value: number) => ({ value: Math.min(STEEPEST, Math.max(0, value)), unit: "°" });

/** @returns slides on a tilt board at the friction that is now held true; null without one */
export function plannedFriction(
  { book, build, resolved }: Asked,
  contact: "wheels" | "skirt",
): Planned | null {
  const surface = findById(book.surfaces, build.surface);
  const skirt = build.skirt && findById(book.skirts, build.skirt);
  const mu = (contact === "wheels" ? resolved.friction : resolved.skirtFriction)?.value ?? 0;
  const tried = contact === "wheels" && build.overrides.wheelFriction !== undefined;
  if (!surface || !(mu > 0) || tried || (contact === "skirt" && !(skirt && skirt.data.share > 0)))
    return null;
  const test: FrictionTest = {
    kind: "friction",
    ...plannedHead,
    surface: surface.id,
    contact,
    skirt: contact === "skirt" ? build.skirt : null,
    instruments: { angle: { absolute: { value: 0.5, unit: "°" } } },
    rows: scatter(SLIDES).map((z) => {
      const slips = (Math.atan(mu * (1 + SCATTER * z)) * 180) / Math.PI;
      return { held: degrees(slips - HALF_BRACKET), slid: degrees(slips + HALF_BRACKET) };
    }),
  };
  return {
    key: `friction-${contact}`,
    kind: "friction",
    title: `Six slides of the ${contact} on ${surface.data.name}`,
    takes: "a board or pane to tilt, an angle gauge, fan off; 5 minutes",
    book: withTest(book, `friction-${contact}`, test),
    build,
  };
}
