import type { FrictionTest } from "../../model/tests/friction.ts";
import { slideContradiction } from "../../model/tests/rowContradictions.ts";
import { toSI } from "../../units/quantity.ts";
import { instrumentUncertainty, type Reading } from "./reading.ts";

/** @returns a friction test's slides: tilt that held and tilt that slid [rad], null where not read */
export function frictionSlides(test: FrictionTest): Reading<{ held: number | null; slid: number | null }>[] {
  return test.rows.map((row, index) => ({
    held: row.held && toSI(row.held, "angle"),
    slid: row.slid && toSI(row.slid, "angle"),
    row: index,
    setAside: row.setAside ?? slideContradiction(row),
  }));
}

/** @returns standard uncertainty of the tilt board's angle [rad], the largest of the tests'; 0 where none is stated */
export function tiltUncertainty(tests: readonly FrictionTest[]): number {
  const ofTest = (test: FrictionTest) => {
    const steepest = Math.max(...frictionSlides(test).map((slide) => slide.slid ?? slide.held ?? 0));
    return instrumentUncertainty(test.instruments.angle, steepest, "angle");
  };
  return Math.max(0, ...tests.map(ofTest));
}
