import type { Book, StoredTest } from "../../../../shared/book/book.ts";
import { findById, testsOf } from "../../../../shared/book/book.ts";
import { frictionSlides, tiltUncertainty } from "../../../../shared/book/readings/friction.ts";
import { inUse } from "../../../../shared/book/readings/reading.ts";
import { type FrictionFit, fitFriction } from "../../../../shared/fit/frictionFit.ts";
import { asProblem } from "../../../../shared/numeric/errors.ts";
import type { Source } from "../chosen.ts";
import { testName } from "../typed.ts";

export interface Slide extends Source {
  readonly key: string;
  readonly test: number;
  readonly aside: string | null;
  /** [rad] */
  readonly held: number | null;
  readonly slid: number | null;
  readonly title: string;
}

/** Slides of one contact: the wheels, or one skirt. */
export interface FrictionGroup {
  readonly key: string;
  readonly title: string;
  readonly slides: readonly Slide[];
  readonly fit: FrictionFit | null;
  /** why there is no fit */
  readonly problem: string | null;
}

type FrictionTests = readonly StoredTest<"friction">[];

function slidesOf(book: Book, tests: FrictionTests): Slide[] {
  return tests.flatMap((test, index) => {
    const stored = findById(book.tests, test.id);
    return frictionSlides(test.data).map((slide) => ({
      key: `${test.id}#${slide.row}`,
      testId: test.id,
      row: slide.row,
      test: index,
      aside: slide.setAside,
      held: slide.held,
      slid: slide.slid,
      title: stored ? testName(stored) : "",
    }));
  });
}

function fitted(tests: FrictionTests): Pick<FrictionGroup, "fit" | "problem"> {
  const slides = tests.flatMap((test) => inUse(frictionSlides(test.data)));
  if (slides.length === 0) return { fit: null, problem: "Every slide is set aside." };
  const angleUncertainty = tiltUncertainty(tests.map((test) => test.data));
  const made = asProblem(() => fitFriction({ slides, angleUncertainty }));
  return "problem" in made ? { fit: null, problem: made.problem } : { fit: made.answered, problem: null };
}

/** @returns the slides on a surface by what slid: wheels first, then skirt by skirt */
export function frictionGroups(book: Book, surfaceId: string): FrictionGroup[] {
  const tests = testsOf(book, "friction").filter((test) => test.data.surface === surfaceId);
  const keyOf = ({ data }: StoredTest<"friction">) =>
    data.contact === "wheels" ? "wheels" : `skirt ${data.skirt ?? ""}`;
  const keys = [...new Set(tests.map(keyOf))].sort((a, b) => Number(b === "wheels") - Number(a === "wheels"));
  return keys.map((key) => {
    const own = tests.filter((test) => keyOf(test) === key);
    const skirt = own[0].data.skirt && findById(book.skirts, own[0].data.skirt);
    const title = key === "wheels" ? "Wheels" : skirt ? skirt.data.name : "Any skirt";
    return { key, title, slides: slidesOf(book, own), ...fitted(own) };
  });
}
