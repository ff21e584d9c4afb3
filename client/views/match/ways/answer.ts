import { correctionAt } from "../../../../shared/book/testedSizes.ts";
import type { Setting } from "../../../../shared/decide/ways/handle.ts";
import { type KeptReach, keptBeside } from "../../../../shared/decide/ways/kept.ts";
import { type Way, type Ways, waysToHold } from "../../../../shared/decide/ways/ways.ts";
import { type Answer, asProblem } from "../../../../shared/numeric/errors.ts";
import { chargeAt } from "../../../../shared/physics/cells/cell.ts";
import type { RotorInput } from "../../../../shared/physics/point/machine.ts";
import { isPropeller } from "../../../../shared/physics/predictAny.ts";
import type { SkirtInput } from "../../../../shared/physics/skirt.ts";
import { type JointReach, jointReaches } from "./joints.ts";
import type { Question } from "./question.ts";

export interface Answered {
  readonly margin: Ways["margin"];
  /** the cell voltage's values as charges too, where the cell's curve says them */
  readonly ways: readonly (Way & { readonly charge: number | null })[];
  /** how deep a joint may be; none without a skirt, or where no pull is needed */
  readonly joints: readonly JointReach[];
  /** a controller that keeps the wanted margin; null where there is none to spare */
  readonly kept: KeptReach | null;
}

export type Reply = Answer<Answered>;

/** The parts at other sizes: a rotor's size correction by the nearest tested one; the lip-gap law away from a measured leak's gap. */
function settingOf({ build, cell, sizes }: Question): Setting {
  if (!("skirt" in build)) return { build, cell };
  const rotor: RotorInput = build.rotor;
  const skirt: SkirtInput = build.skirt;
  return {
    build,
    cell,
    rotorAt: (diameter) => ({ ...rotor, diameter, sizeCorrection: correctionAt(sizes, diameter) }),
    skirtAt: (gap) => ({ ...skirt, gap, measuredLeak: null }),
  };
}

/** @returns every handle's way @throws as {@link waysToHold} */
export function answerTo(question: Question): Answered {
  const { build, cell, asked, crossing } = question;
  const { margin, ways } = waysToHold(settingOf(question), asked);
  const charge = ({ handle, value }: Way) =>
    handle === "cellVoltage" && cell && value !== null ? chargeAt(cell, value) : null;
  const joints =
    crossing && margin !== null && !isPropeller(build) ? jointReaches(build, crossing, asked) : [];
  const kept = keptBeside({ build, cell }, asked, margin);
  return { margin, joints, kept, ways: ways.map((way) => ({ ...way, charge: charge(way) })) };
}

/** @returns the ways, or in words why there are none */
export function replyTo(question: Question): Reply {
  return asProblem(() => answerTo(question));
}
