import { motorRows } from "../../../../shared/book/readings/motor.ts";
import { inUse } from "../../../../shared/book/readings/reading.ts";
import { fitMotor, type MotorFit } from "../../../../shared/fit/motorFit.ts";
import type { MotorTest } from "../../../../shared/model/tests/motor.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { toSI } from "../../../../shared/units/parse.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import { attempt, type Figure, NOTHING_YET, type RowName, type Running, withError } from "./result.ts";
import { motorSketch } from "./sketches.ts";

function figuresOf(fit: MotorFit, hasNoLoad: boolean): Figure[] {
  const friction = hasNoLoad
    ? formatQuantity(fit.frictionTorque, "torque")
    : "not yet: needs a run without load";
  return [
    { label: "K_v", text: `${withError(fit.kv, fit.standardErrors.kv)} ${unitOf("kv")}` },
    {
      label: "R",
      text: `${withError(fit.resistance, fit.standardErrors.resistance)} ${unitOf("resistance")}`,
    },
    { label: "Friction torque", text: friction },
  ];
}

/** K_v and R so far, or what to measure next. */
export function runMotor(test: MotorTest, names: readonly RowName[]): Running {
  const rows = motorRows(test);
  if (rows.length === 0)
    return { ...NOTHING_YET, next: "Type a first run: full throttle, nothing on the shaft." };
  const byRow = new Map(
    rows.map((row) => [names[row.row].key, row.throttle === 1 ? "" : "not in the fit: throttle below 100 %"]),
  );
  const full = inUse(rows).filter((row) => row.throttle === 1);
  if (full.length === 0) return { ...NOTHING_YET, byRow, next: "The fit needs runs at full throttle." };
  const resistance = test.resistance && toSI(test.resistance, "resistance");
  const { found: fit, next } = attempt(() => fitMotor({ rows: full, resistance }));
  return {
    figures: fit
      ? figuresOf(
          fit,
          full.some((row) => row.noLoad),
        )
      : [],
    byRow,
    next,
    notes: fit?.warnings.map((warning) => warning.message) ?? [],
    sketch: motorSketch(rows, fit, names),
  };
}
