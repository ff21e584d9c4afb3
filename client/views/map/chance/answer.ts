import { buildUncertainty } from "../../../../shared/book/buildUncertainty.ts";
import { resolveBuild, solvable } from "../../../../shared/book/resolve.ts";
import { CHARGE_UNCERTAINTY } from "../../../../shared/book/uncertainty/packUncertainty.ts";
import { type ChanceNodes, chanceNodes } from "../../../../shared/decide/map/chance.ts";
import { type Answer, asProblem } from "../../../../shared/numeric/errors.ts";
import type { ChanceAsked } from "./question.ts";

export type Reply = Answer<ChanceNodes>;

const VOLTAGE = "pack.openCircuitVoltage";

/** @returns the spread of the margin over the map, or in words why there is none */
export function replyTo({ book, build, question, samples }: ChanceAsked): Reply {
  return asProblem(() => {
    const resolved = resolveBuild(book, build);
    const { sources: _whence, ...uncertain } = buildUncertainty(book, build, resolved);
    const isStated = build.uncertainty[VOLTAGE] !== undefined;
    const charge = isStated ? null : (build.uncertainty.charge ?? CHARGE_UNCERTAINTY);
    const told = solvable(resolved) ?? question.of.input;
    return chanceNodes({ question, uncertain, told, charge, samples });
  });
}
