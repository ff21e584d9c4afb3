import { bleedFlow } from "../../fit/bleed.ts";
import type { Plate } from "../../model/tests/common.ts";
import { airFrom } from "../../physics/air.ts";
import { toSI } from "../../units/quantity.ts";
import type { Book } from "../book.ts";
import { inlined } from "../named.ts";
import type { Asked, Planned } from "./planned.ts";

/** Pressure at which a plate's coefficient is read off its law [Pa]. Judgement: the middle of what cheap sensors read. */
const READ_AT = 500;

const isBare = (plate: Plate): boolean =>
  plate.holes.some(({ dischargeCoefficient }) => dischargeCoefficient === undefined);

/** The plate with coefficients of its own, those that its law now gives. */
function calibrated(plate: Plate, { build }: Asked): Plate {
  const air = airFrom(build.air);
  const holes = plate.holes.map((hole) => {
    const [diameter, thickness] = [toSI(hole.diameter, "length"), toSI(hole.thickness, "length")];
    const one = { diameter, thickness, count: 1, edge: hole.edge };
    const { dischargeCoefficient } = bleedFlow({ holes: [one], air, pressure: READ_AT });
    return { ...hole, dischargeCoefficient: hole.dischargeCoefficient ?? dischargeCoefficient };
  });
  return { holes };
}

function withPlates(asked: Asked): { book: Book; corrects: string[] } {
  const corrected: Book["tests"][number][] = [];
  const tests = asked.book.tests.map((test) => {
    const data = inlined(asked.book, test.data);
    if ((data.kind !== "curve" && data.kind !== "leak") || !data.plate || !isBare(data.plate)) return test;
    corrected.push(test);
    return { ...test, data: { ...data, plate: calibrated(data.plate, asked) } };
  });
  const newestFirst = corrected.sort((a, b) => b.data.date.localeCompare(a.data.date));
  return { book: { ...asked.book, tests }, corrects: newestFirst.map(({ id }) => id) };
}

/** @returns the bleed plate measured against a known flow, so that all its tests lose the plate's own uncertainty; null where every plate is */
export function plannedPlateCheck(asked: Asked): Planned | null {
  const { book, corrects } = withPlates(asked);
  if (corrects.length === 0) return null;
  return {
    key: "plate",
    kind: "curve",
    title: "Calibrate the bleed plate: its holes' own discharge coefficients",
    takes:
      "a bag or bell of known volume emptied through the plate at a steady pressure, a watch; 30 minutes; then correct the plate, in the book or in its tests",
    corrects,
    book,
    build: asked.build,
  };
}
