import { frictionSlides, inUse, tiltUncertainty } from "../../../../shared/book/readings.ts";
import { fitFriction } from "../../../../shared/fit/frictionFit.ts";
import type { FrictionTest } from "../../../../shared/model/tests/friction.ts";
import { attempt, digits, NOTHING_YET, type Running, withError } from "./result.ts";

function rowText({ held, slid, setAside }: ReturnType<typeof frictionSlides>[number]): string {
  if (held !== null && slid !== null && slid < held && setAside !== null) return setAside;
  if (held !== null && slid !== null) return `μ ${digits(Math.tan(held))} to ${digits(Math.tan(slid))}`;
  if (slid !== null) return `μ below ${digits(Math.tan(slid))}`;
  return held === null ? "" : `μ above ${digits(Math.tan(held))}`;
}

/** μ of each slide and of all so far. */
export function runFriction(test: FrictionTest, keys: readonly number[]): Running {
  const slides = frictionSlides(test);
  if (slides.length === 0) return { ...NOTHING_YET, next: "Type a first slide: the tilt at which it slid." };
  const byRow = new Map(slides.map((slide) => [keys[slide.row], rowText(slide)]));
  const { found: fit, next } = attempt(() =>
    fitFriction({ slides: inUse(slides), angleUncertainty: tiltUncertainty([test]) }),
  );
  return {
    figures: fit ? [{ label: "μ", text: withError(fit.mu, fit.uncertainty) }] : [],
    byRow,
    next,
    notes: fit?.warnings.map((warning) => warning.message) ?? [],
  };
}
