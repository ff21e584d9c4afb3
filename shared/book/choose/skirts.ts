import { steppedValues } from "../../decide/choose/count.ts";
import type { TriedSkirt, TriedStand } from "../../decide/choose/problem.ts";
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
import { type Context, tried } from "./context.ts";

type Asked = ChooseRequest["skirts"][number];

interface OnSurface {
  readonly context: Context;
  readonly surface: StoredOf<"surfaces">;
  /** with the skirt that is asked for */
  readonly build: Build;
}

interface Standing extends OnSurface {
  readonly skirt: StoredOf<"skirts">;
}

/** The skirt at one gap as a build with it would stand; without a gap, the skirt's own. */
function atGap({ context, skirt, surface, build }: Standing, gap: number | null) {
  const { book } = context;
  const tried = gap === null ? build : { ...build, overrides: { gap } };
  const basis = gapBasis(tried, skirt, calibrationOf(book, tried));
  const leak = leakBasis(book, skirt.id, surface.id, basis);
  return skirtInput(skirt, surfaceRoughness(book, surface).value, basis.value, leak?.leak ?? null);
}

function wheelsOf({ context, surface, build }: OnSurface): number | string {
  const { book } = context;
  const answer =
    calibratedFriction(undefined, calibrationOf(book, build)) ?? wheelFriction(book, surface, undefined);
  return answer.basis === "missing" ? answer.missing.message : answer.value;
}

/** A skirt on the surface, with the wheels beside it: what both kinds of combinations take alike. */
function standOn(standing: Standing): (TriedStand & { readonly id: string }) | string {
  const { context, skirt, surface } = standing;
  const { name, mass, height, price, share } = skirt.data;
  const ownMass = skirtMass(context);
  if (mass === undefined && ownMass !== null) return `${name} has no mass: weigh it, on the skirt's page.`;
  const friction = wheelsOf(standing);
  if (typeof friction === "string") return friction;
  return {
    id: skirt.id,
    mass: ownMass === null ? 0 : (mass ?? 0),
    height,
    price,
    stacked: stackedBy(context.build, "skirt", { ...context.housing, skirt: skirt.data }),
    share,
    wheelFriction: friction,
    skirtFriction: skirtFriction(context.book, surface, skirt).value,
  };
}

function standingOf(context: Context, id: string): Standing | string {
  const { book, build } = context;
  const skirt = findById(book.skirts, id);
  const surface = findById(book.surfaces, build.surface);
  if (!skirt || !surface) return `The book has no skirt ${id}.`;
  return { context, skirt, surface, build: { ...build, skirt: id } };
}

function skirtOf(context: Context, { skirt: id, gaps }: Asked, at: string): readonly TriedSkirt[] | string {
  if (id === null) return [];
  const { book, build } = context;
  const standing = standingOf(context, id);
  if (typeof standing === "string") return standing;
  const stand = standOn(standing);
  if (typeof stand === "string") return stand;
  const own = {
    ...stand,
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

/** @returns the skirts to try; a gap at which a leak was measured stands on its own, with that leak */
export function triedSkirts(context: Context, asked: readonly Asked[]): TriedSkirt[] {
  return tried(context, "skirts", asked, (each, at) => skirtOf(context, each, at));
}

/** The wheels alone. */
function bareStand(context: Context): TriedStand | string {
  const { book, build, housing } = context;
  const surface = findById(book.surfaces, build.surface);
  if (!surface) return `The book has no surface ${build.surface}.`;
  const friction = wheelsOf({ context, surface, build: { ...build, skirt: null } });
  if (typeof friction === "string") return friction;
  const stacked = stackedBy(build, "skirt", { ...housing, skirt: null });
  const none = { id: null, mass: 0, height: 0, price: 0, stacked };
  return { ...none, share: 0, wheelFriction: friction, skirtFriction: 0 };
}

function standUnder(context: Context, { skirt: id }: Asked): readonly TriedStand[] | string {
  const { book, build } = context;
  const crosses = (findById(book.surfaces, build.surface)?.data.joints ?? []).length > 0;
  const standing = id === null ? null : standingOf(context, id);
  if (typeof standing === "string") return standing;
  const stand = standing === null ? bareStand(context) : standOn(standing);
  return typeof stand === "string" ? stand : [{ ...stand, crosses }];
}

/** @returns what propellers stand on: each skirt once, whatever its gaps, or none */
export function triedStands(context: Context, asked: readonly Asked[]): TriedStand[] {
  const stands = tried(context, "skirts", asked, (each) => standUnder(context, each));
  return stands.filter(({ id }, i) => stands.findIndex((each) => each.id === id) === i);
}
