import { type Book, findById } from "../../../../shared/book/book.ts";
import { withMass } from "../../../../shared/book/mass/withMass.ts";
import { inUse } from "../../../../shared/book/readings/reading.ts";
import { weighedMass, weighings } from "../../../../shared/book/weighed.ts";
import type { Weighed } from "../../../../shared/fit/weighFit.ts";
import type { WeighInTest } from "../../../../shared/model/tests/weighIn.ts";
import { formatQuantity, inUnit, withUnit } from "../../../../shared/units/format.ts";
import { headed, unitOf } from "../../../../shared/units/showing.ts";
import { counted } from "../../../ui/count.ts";
import { attempt, type Figure, NOTHING_YET, type RowName, type Running, withError } from "./result.ts";
import { pointSketch } from "./sketch.ts";

/** @returns a weighed mass with its standard uncertainty */
export function massText({ mass, uncertainty }: Weighed): string {
  return withUnit(
    withError(inUnit(mass, "mass"), uncertainty === null ? null : inUnit(uncertainty, "mass")),
    unitOf("mass"),
  );
}

function besideBuild(test: WeighInTest, { mass }: Weighed, book: Book): Figure[] {
  const build = test.weighed === "build" ? findById(book.builds, test.build) : null;
  if (!build) return [];
  const stated = withMass(book, build.data).vehicle.mass;
  const more = mass - stated;
  const by = `${formatQuantity(Math.abs(more), "mass", { digits: 2 })} ${more > 0 ? "lighter" : "heavier"}`;
  const same = Math.abs(more) < 5e-7 * stated;
  return [
    {
      label: `${build.data.name} says`,
      text: `${formatQuantity(stated, "mass", { digits: 4 })}${same ? "" : `, ${by}`}`,
    },
  ];
}

/** The mass so far, and what the build says of it. */
export function runWeighIn(test: WeighInTest, names: readonly RowName[], book: Book): Running {
  const readings = weighings(test);
  const { found, next } = attempt(() => weighedMass(test));
  if (!found) return { ...NOTHING_YET, next };
  const used = inUse(readings).length;
  const again = used === 1 ? "Take it off and weigh it again: one reading shows no scatter." : null;
  return {
    figures: [
      { label: `Mass, ${counted(used, "reading")}`, text: massText(found) },
      ...besideBuild(test, found, book),
    ],
    byRow: new Map(),
    next: again,
    notes: [],
    sketch: pointSketch({
      title: "Readings of the scale",
      row: "reading",
      x: "reading, in order",
      y: headed("mass", "mass"),
      points: readings.map(({ mass, row, setAside }) => ({
        ...names[row],
        x: names[row].number,
        y: inUnit(mass, "mass"),
        aside: setAside,
      })),
    }),
  };
}
