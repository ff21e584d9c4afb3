import { steppedValues } from "../../decide/choose/count.ts";
import type { AdmittedSkirt } from "../../decide/choose/problem.ts";
import type { ChooseRequest } from "../../model/api/choose.ts";
import type { Build } from "../../model/build.ts";
import type { StoredOf } from "../../model/record.ts";
import { findById } from "../book.ts";
import { calibrationOf } from "../calibration.ts";
import { stackedBy } from "../fitUp/stackedBy.ts";
import { calibratedFriction, skirtFriction, wheelFriction } from "../frictionBasis.ts";
import { gapBasis } from "../gapBasis.ts";
import { jointsUnder } from "../jointsUnder.ts";
import { leakBasis } from "../leakBasis.ts";
import { pullFactorBasis } from "../pullFactorBasis.ts";
import { surfaceRoughness } from "../roughnessBasis.ts";
import { skirtInput } from "../skirtInput.ts";
import { skirtMass } from "./bareMass.ts";
import { admitted, type Context } from "./context.ts";

type Asked = ChooseRequest["skirts"][number];

interface Standing {
  readonly context: Context;
  readonly skirt: StoredOf<"skirts">;
  readonly surface: StoredOf<"surfaces">;
  readonly build: Build;
}

/** The skirt at one gap as a build with it would stand; without a gap, the skirt's own. */
function atGap({ context, skirt, surface, build }: Standing, gap: number | null) {
  const { book } = context;
  const tried = gap === null ? build : { ...build, overrides: { gap } };
  const basis = gapBasis(tried, skirt, calibrationOf(book, tried));
  const leak = leakBasis(book, skirt.id, surface.id, basis);
  return skirtInput(skirt, surfaceRoughness(book, surface).value, basis.value, leak?.leak ?? null);
}

function wheelsOf({ context, surface, build }: Standing): number | string {
  const { book } = context;
  const answer =
    calibratedFriction(undefined, calibrationOf(book, build)) ?? wheelFriction(book, surface, undefined);
  return answer.basis === "missing" ? answer.missing.message : answer.value;
}

function skirtOf(
  context: Context,
  { skirt: id, gaps }: Asked,
  at: string,
): readonly AdmittedSkirt[] | string {
  const { book, build } = context;
  const skirt = findById(book.skirts, id);
  const surface = findById(book.surfaces, build.surface);
  if (!skirt || !surface) return `The book has no skirt ${id}.`;
  const { name, mass, height, price, share } = skirt.data;
  const ownMass = skirtMass(context);
  if (mass === undefined && ownMass !== null) return `${name} has no mass: weigh it, on the skirt's page.`;
  const standing = { context, skirt, surface, build: { ...build, skirt: id } };
  const friction = wheelsOf(standing);
  if (typeof friction === "string") return friction;
  const own = {
    id,
    mass: ownMass === null ? 0 : (mass ?? 0),
    height,
    price,
    stacked: stackedBy(build, "skirt", { ...context.housing, skirt: skirt.data }),
    share,
    wheelFriction: friction,
    skirtFriction: skirtFriction(book, surface, skirt).value,
    joints: jointsUnder(book, { skirt: id, surface: build.surface }),
    pullFactor: pullFactorBasis(calibrationOf(book, standing.build)).value,
  };
  const asked = gaps ? steppedValues(`${at}.gaps`, gaps) : [null];
  const inputs = asked.map((gap) => atGap(standing, gap));
  const law = inputs.filter(({ measuredLeak }) => measuredLeak === null);
  const tested = inputs.filter(({ measuredLeak }) => measuredLeak !== null);
  return [...(law.length > 0 ? [law] : []), ...tested.map((input) => [input])].map((group) => {
    const { gap: _each, ...input } = group[0];
    return { ...own, ...input, gaps: group.map(({ gap }) => gap) };
  });
}

/** @returns the admitted skirts; a gap at which a leak was measured stands on its own, with that leak */
export function admittedSkirts(context: Context, asked: readonly Asked[]): AdmittedSkirt[] {
  return admitted(context, "skirts", asked, (each, at) => skirtOf(context, each, at));
}
