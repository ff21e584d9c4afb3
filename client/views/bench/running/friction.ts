import { frictionSlides, tiltUncertainty } from "../../../../shared/book/readings/friction.ts";
import { inUse } from "../../../../shared/book/readings/reading.ts";
import { fitFriction } from "../../../../shared/fit/frictionFit.ts";
import type { FrictionTest } from "../../../../shared/model/tests/friction.ts";
import { attempt, digits, NOTHING_YET, type RowName, type Running, withError } from "./result.ts";
import { bracketSketch } from "./sketch.ts";
import { axisOf } from "./sketches.ts";

function rowText({ held, slid, setAside }: ReturnType<typeof frictionSlides>[number]): string {
  if (held !== null && slid !== null && slid < held && setAside !== null) return setAside;
  if (held !== null && slid !== null) return `μ ${digits(Math.tan(held))} to ${digits(Math.tan(slid))}`;
  if (slid !== null) return `μ below ${digits(Math.tan(slid))}`;
  return held === null ? "" : `μ above ${digits(Math.tan(held))}`;
}

const tilt = axisOf("tilt", "angle");

/** μ of each slide and of all so far. */
export function runFriction(test: FrictionTest, names: readonly RowName[]): Running {
  const slides = frictionSlides(test);
  if (slides.length === 0) return { ...NOTHING_YET, next: "Type a first slide: the tilt at which it slid." };
  const byRow = new Map(slides.map((slide) => [names[slide.row].key, rowText(slide)]));
  const { found: fit, next } = attempt(() =>
    fitFriction({ slides: inUse(slides), angleUncertainty: tiltUncertainty([test]) }),
  );
  return {
    figures: fit ? [{ label: "μ", text: withError(fit.mu, fit.uncertainty) }] : [],
    byRow,
    next,
    notes: fit?.warnings.map((warning) => warning.message) ?? [],
    sketch: bracketSketch({
      title: fit ? "Tilt that held and that slid; dots: the tilt of μ" : "Tilt that held and that slid",
      row: "slide",
      value: tilt.label,
      held: "held",
      letGo: "slid",
      brackets: slides.map(({ row, held, slid, setAside }) => ({
        ...names[row],
        lo: held === null ? null : tilt.of(held),
        hi: slid === null ? null : tilt.of(slid),
        aside: setAside,
      })),
      levels: fit ? [{ key: "mu", at: tilt.of(Math.atan(fit.mu)) }] : [],
    }),
  };
}
