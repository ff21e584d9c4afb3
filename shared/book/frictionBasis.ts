import { type FrictionFit, fitFriction } from "../fit/frictionFit.ts";
import type { StoredOf } from "../model/record.ts";
import { NotEnoughDataError } from "../numeric/errors.ts";
import { type Book, oncePerBook, testsOf } from "./book.ts";
import type { BuildCalibration } from "./calibrated.ts";
import type { Missing } from "./missing.ts";
import { frictionSlides, tiltUncertainty } from "./readings/friction.ts";
import { inUse } from "./readings/reading.ts";

/** Friction of one contact on one surface and what it rests on. */
export interface FrictionBasis {
  readonly basis: "what-if" | "measured" | "calibrated" | "stated";
  readonly value: number;
  /** standard uncertainty; null where none is stated */
  readonly uncertainty: number | null;
  readonly testIds: readonly string[];
}

/** What tilt tests of one contact on one surface say. */
export interface TestedFriction {
  readonly fit: FrictionFit | null;
  /** in use or, where there is no fit, too few to tell */
  readonly testIds: readonly string[];
  /** why there are tests and no fit; null otherwise */
  readonly why: string | null;
}

/** @returns the fit of all tilt tests of a contact, or why they make none */
export function testedFriction(
  book: Book,
  surfaceId: string,
  contact: "wheels" | "skirt",
  skirtId: string | null,
): TestedFriction {
  return oncePerBook(book, `friction ${surfaceId} ${contact} ${skirtId}`, () => {
    const tests = testsOf(book, "friction").filter(
      ({ data }) =>
        data.surface === surfaceId &&
        data.contact === contact &&
        (data.skirt === null || data.skirt === skirtId),
    );
    const testIds = tests.map((test) => test.id);
    const slides = tests.flatMap((test) => inUse(frictionSlides(test.data)));
    if (slides.length === 0) return { fit: null, testIds: [], why: null };
    try {
      const angleUncertainty = tiltUncertainty(tests.map((test) => test.data));
      return { fit: fitFriction({ slides, angleUncertainty }), testIds, why: null };
    } catch (error) {
      if (error instanceof NotEnoughDataError) return { fit: null, testIds, why: error.message };
      throw error;
    }
  });
}

/** @returns friction of the wheels: what-if, tilt-board tests, the surface's stated value, or what is missing */
export function wheelFriction(
  book: Book,
  surface: StoredOf<"surfaces">,
  whatIf: number | undefined,
): FrictionBasis | { readonly basis: "missing"; readonly missing: Missing } {
  if (whatIf !== undefined) return { basis: "what-if", value: whatIf, uncertainty: null, testIds: [] };
  const { fit, testIds } = testedFriction(book, surface.id, "wheels", null);
  if (fit) return { basis: "measured", value: fit.mu, uncertainty: fit.uncertainty, testIds };
  const { wheelFriction: value, uncertainty } = surface.data;
  if (value !== undefined)
    return { basis: "stated", value, uncertainty: uncertainty.wheelFriction ?? null, testIds: [] };
  const message = `No friction of the wheels on ${surface.data.name} is known: tilt the vehicle on it until it slides, fan off.`;
  return { basis: "missing", missing: { path: "friction", message, test: "friction" } };
}

/** @returns friction of the wheels as pulls along the surface tell it, the tilt board's word within it; null where they don't, or another is tried */
export function calibratedFriction(
  whatIf: number | undefined,
  calibration: BuildCalibration | null,
): FrictionBasis | null {
  const friction = calibration?.answer?.friction;
  if (whatIf !== undefined || !calibration || !friction) return null;
  const { testIds } = calibration;
  return { basis: "calibrated", value: friction.mean, uncertainty: friction.sd, testIds };
}

/** @returns friction of the skirt: tilt-board tests, the surface's stated value, else the skirt's own */
export function skirtFriction(
  book: Book,
  surface: StoredOf<"surfaces">,
  skirt: StoredOf<"skirts">,
): FrictionBasis {
  const { fit, testIds } = testedFriction(book, surface.id, "skirt", skirt.id);
  if (fit) return { basis: "measured", value: fit.mu, uncertainty: fit.uncertainty, testIds };
  const value = surface.data.skirtFriction ?? skirt.data.friction;
  const uncertainty = surface.data.uncertainty.skirtFriction ?? skirt.data.uncertainty.friction ?? null;
  return { basis: "stated", value, uncertainty, testIds: [] };
}
