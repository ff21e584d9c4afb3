import { inUse } from "../../../../shared/book/readings/reading.ts";
import { heightInstruments, rideHeights } from "../../../../shared/book/readings/rideHeight.ts";
import { fitRideHeight, type RideHeightFit } from "../../../../shared/fit/rideHeightFit.ts";
import type { RideHeightTest } from "../../../../shared/model/tests/rideHeight.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import { gapText } from "../../../ui/gapWords.ts";
import { attempt, type Figure, NOTHING_YET, type RowName, type Running, withError } from "./result.ts";
import { rideHeightSketch } from "./sketches.ts";

function figuresOf({ stiffness, heights, standardErrors }: RideHeightFit): Figure[] {
  const [k, error] = [stiffness, standardErrors.stiffness].map((value) => inUnit(value, "stiffness"));
  return [
    { label: "Stiffness", text: `${withError(k, error)} ${unitOf("stiffness")}` },
    { label: "Lip without load", text: gapText(heights[0], standardErrors.height) },
  ];
}

/** Stiffness of the running gear so far. */
export function runRideHeight(test: RideHeightTest, names: readonly RowName[]): Running {
  const readings = rideHeights(test);
  if (readings.length === 0)
    return { ...NOTHING_YET, next: "Type the lip's height with no load on the vehicle." };
  const byRow = new Map(readings.map(({ row, height }) => [names[row].key, height === 0 ? "touches" : ""]));
  const { heightUncertainty, loadUncertainty } = heightInstruments([test]);
  const { found: fit, next } = attempt(() =>
    fitRideHeight({ points: inUse(readings), heightUncertainty, loadUncertainty }),
  );
  return {
    figures: fit ? figuresOf(fit) : [],
    byRow,
    next,
    notes: fit?.warnings.map(({ message }) => message) ?? [],
    sketch: rideHeightSketch(readings, fit, names),
  };
}
