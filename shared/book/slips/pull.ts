import type { PullTest } from "../../model/tests/pull.ts";
import { answerOrNull } from "../../numeric/errors.ts";
import { toSI } from "../../units/quantity.ts";
import { type Book, findById } from "../book.ts";
import { predictedPull } from "../pullPrediction.ts";
import { type PullTrial, pullTrials, rigWeight } from "../readings/pull.ts";
import { inUse, type Reading } from "../readings/reading.ts";
import { slipOfDiameter } from "./ofPart.ts";
import { beside, OFF, type Slip, slipOf, UNIT } from "./slip.ts";
import { unusual } from "./usual.ts";
import { packVoltage } from "./voltage.ts";

/** Rigs and shims as they are hung and laid. Common practice, no source. */
const RIG = { name: "mass", low: 5e-4, high: 20 } as const;
export const SHIM = { name: "length", low: 1e-5, high: 0.01 } as const;
const CHARGE = { name: "fraction", low: 0.02, high: 1 } as const;
const DUTY = { name: "fraction", low: 0.05, high: 1 } as const;

/** The load that the parts should hold, as it is typed: without the rig's own weight [N]; null where they don't say. */
function predictedLoad(book: Book, test: PullTest, trial: PullTrial): number | null {
  const predicted = answerOrNull(() => predictedPull(book, test, trial).predicted);
  return predicted === null ? null : predicted - rigWeight(test);
}

function slipsOfRow(book: Book, test: PullTest, trial: Reading<PullTrial>): Slip[] {
  const { held, letGo, voltage, gap } = test.rows[trial.row];
  const at = (key: string) => `rows.${trial.row}.${key}`;
  const load = predictedLoad(book, test, trial);
  const rig = rigWeight(test) === 0 ? "" : " beside the rig";
  const loads = (["held", "letGo"] as const).flatMap((key) => {
    const typed = key === "held" ? held : letGo;
    if (!typed || load === null || !(load > 0)) return [];
    const said = `${beside(load, "load", typed)}${rig} was predicted. ${UNIT}`;
    // what held is a lower bound alone: too little of it says nothing
    const low = key === "held" ? null : load;
    return slipOf({ path: at(key), value: toSI(typed, "load"), low, high: load, slack: OFF, said });
  });
  return [
    ...loads,
    ...(voltage
      ? packVoltage(at("voltage"), voltage, findById(book.packs, test.pack)?.data.series ?? null)
      : []),
    ...(gap ? unusual(at("gap"), toSI(gap, "length"), SHIM) : []),
  ];
}

/** @returns readings of a pull test that may be slips: loads beside the predicted pull, the set-up beside its parts */
export function slipsOfPull(book: Book, test: PullTest): Slip[] {
  return [
    ...slipOfDiameter(book, test.rotor, toSI(test.diameter, "length")),
    ...unusual("rigMass", toSI(test.rigMass, "mass"), RIG),
    ...unusual("duty", toSI(test.duty, "fraction"), DUTY),
    ...(test.charge ? unusual("charge", toSI(test.charge, "fraction"), CHARGE) : []),
    ...inUse(pullTrials(test)).flatMap((trial) => slipsOfRow(book, test, trial)),
  ];
}
