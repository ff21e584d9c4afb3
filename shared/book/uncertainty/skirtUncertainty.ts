import type { Skirt } from "../../model/parts/skirt.ts";
import type { Surface } from "../../model/parts/surface.ts";
import { formatFixed } from "../../units/format.ts";
import type { LeakBasis } from "../leakBasis.ts";
import { type Resolved, solvable } from "../resolve.ts";
import type { Collector } from "./collector.ts";
import { LIP_LAW } from "./lipLaw.ts";
import { widened } from "./widened.ts";

/** How well a gap comes back that was set anew since its leak test, of the gap [-]. Common practice, no source: docs/method/uncertainty.md, What was never measured here. */
const SET_ANEW = 0.05;

interface On {
  readonly skirt: Skirt | null;
  readonly surface: Surface;
}

/** @returns covariance of C_L and x of a leak test, from that of (ln C_L, x), widened [product of two units] */
export function leakCovariance({ leak, fit }: LeakBasis): number[][] {
  const { coefficient: c } = leak;
  const [[ll, lx], [, xx]] = fit.covariance ?? [
    [0, 0],
    [0, 0],
  ];
  return widened(
    [
      [c * c * ll, c * lx],
      [c * lx, xx],
    ],
    fit.dof,
  );
}

function addLeak(leak: LeakBasis, { skirt, surface }: On, into: Collector): void {
  into.addGroup(["skirt.measuredLeak.coefficient", "skirt.measuredLeak.exponent"], leakCovariance(leak), {
    from: "fit",
    what: `leak test of ${skirt?.name ?? "the skirt"} on ${surface.name}`,
    test: "leak",
  });
}

/** What the pulls tell together: pull factor, friction where they were dragged along, and the gap where no leak test stands in its place. The roughness' uncertainty is in the gap's. */
function addPosterior({ calibration, gap, leak, friction }: Resolved, { skirt }: On, into: Collector): void {
  const answer = calibration?.answer;
  if (!answer) return;
  const paths = {
    gap: !leak && gap.basis === "calibrated" ? "skirt.gap" : null,
    pullFactor: answer.pullFactor ? "vehicle.pullFactor" : null,
    friction: friction?.basis === "calibrated" ? "vehicle.wheelFriction" : null,
  };
  into.addJoint(answer.joint, paths, {
    from: "calibration",
    what: `pull and leak tests of ${skirt?.name ?? "the skirt"}`,
    test: "pull",
  });
}

/** How wide the gap is: a leak test in its place, the calibration's, else as stated, with the surface's roughness as measured separately or stated. */
export function addGapUncertainty(resolved: Resolved, on: On, into: Collector): void {
  const { leak, gap, roughness } = resolved;
  if (leak) addLeak(leak, on, into);
  addPosterior(resolved, on, into);
  if (!leak && gap.basis !== "calibrated") {
    const name = on.skirt?.name ?? "the skirt";
    into.add("skirt.gap", gap.uncertainty, { from: "stated", what: `gap of ${name}`, test: "leak" });
    const told = roughness?.basis === "measured separately";
    const what = `${told ? "leak tests that tell the roughness" : "roughness"} of ${on.surface.name}`;
    into.add("skirt.roughness", roughness?.sd, { from: told ? "tests" : "stated", what, test: "leak" });
  }
}

/** The pull factor before any pull: what nobody measured is right within a tenth. */
export function addFactorUncertainty(
  { pullFactor }: Resolved,
  { skirt, surface }: On,
  into: Collector,
): void {
  if (pullFactor.basis !== "assumed") return;
  const what = `pull factor, as no pull with ${skirt?.name ?? "the skirt"} on ${surface.name} is logged`;
  into.addFactor("vehicle.pullFactor", pullFactor.uncertainty, { from: "default", what, test: "pull" });
}

/** Friction of the wheels, and of a skirt that carries load, on the surface: from tilt tests or as stated. */
export function addFrictionUncertainty(resolved: Resolved, { surface }: On, into: Collector): void {
  for (const [path, contact, basis] of [
    ["vehicle.wheelFriction", "wheels", resolved.friction],
    ["vehicle.skirtFriction", "skirt", resolved.skirtFriction],
  ] as const) {
    if (contact === "skirt" && !((solvable(resolved)?.vehicle.skirtShare ?? 0) > 0)) continue;
    const tilted = basis?.basis === "measured";
    const what = `${tilted ? "tilt tests" : "friction"} of the ${contact} on ${surface.name}`;
    into.add(path, basis?.uncertainty, { from: tilted ? "tests" : "stated", what, test: "friction" });
  }
}

/**
 * How well a gap comes back, by the leak tests of one setting after another and the default, which counts as one pair of them.
 *
 *     s² = [½·0.05² + Σ(e − ē)²]/K,  e = (ln C_L of each test)/(4x − 1);  a setting anew from the mean of K: s²·(1 + 1/K)
 *
 * @returns standard uncertainty of ln h [-]; the default's 0.05 with one test
 */
export function setAnewBy({ offsets, leak }: LeakBasis): number {
  const gaps = offsets.map((offset) => offset / (4 * leak.exponent - 1));
  const count = Math.max(1, gaps.length);
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / count;
  const spread = gaps.reduce((sum, gap) => sum + (gap - mean) ** 2, 0);
  return Math.sqrt(((SET_ANEW ** 2 / 2 + spread) / count) * (1 + 1 / count));
}

/** A skirt that was taken off and set anew since its leak test stands by another gap: C_L ∝ h^(4x − 1). */
export function addSetAnew({ leak, input }: Resolved, into: Collector): void {
  if (!leak || !input?.skirt.measuredLeak) return;
  const gap = setAnewBy(leak);
  const by = gap * (4 * leak.leak.exponent - 1);
  const effects = [{ path: "skirt.measuredLeak.coefficient", by, onLogarithm: true }];
  const what = `skirt set anew since its leak test, gap ±\u202f${formatFixed(100 * gap, 0)}\u202f%`;
  const several = leak.offsets.length > 1;
  into.addCause(
    { name: "skirt set anew", effects },
    several
      ? { from: "tests", what: `${what}, by ${leak.offsets.length} leak tests`, test: "leak" }
      : { from: "default", what, test: "leak" },
  );
}

/** K and f of the lip wherever its law is asked beside the joints: without a leak test in its place. */
export function addLipLaw({ input, leak }: Resolved, name: string, into: Collector): void {
  if (!input || leak) return;
  const by = (what: string) =>
    ({ from: "default", what: `${what} of ${name}, ±\u202f15\u202f%`, test: "leak" }) as const;
  into.add("skirt.lossSum", LIP_LAW * (input.skirt.lossSum ?? 0), by("edge loss"));
  if (input.skirt.land > 0) into.add("skirt.landFriction", LIP_LAW, by("friction along the lip"));
}

/** How far the gap gives: by ride-height tests, or as the build states it, which then stands already. */
export function addStiffnessUncertainty({ stiffness }: Resolved, gear: string, into: Collector): void {
  if (stiffness.basis !== "measured") return;
  const what = `ride-height tests of ${gear}`;
  into.add("vehicle.verticalStiffness", stiffness.uncertainty, { from: "tests", what, test: "ride-height" });
}

/** The skirt's own sizes, as stated. */
export function addSkirtUncertainty({ name, uncertainty }: Skirt, into: Collector): void {
  const fields = { area: "area", perimeter: "perimeter", land: "land", lossSum: "edge loss" } as const;
  for (const [field, words] of Object.entries(fields))
    into.add(`skirt.${field}`, uncertainty[field], {
      from: "stated",
      what: `${words} of ${name}`,
      test: null,
    });
  const share = { from: "stated", what: `load share of ${name}`, test: null } as const;
  into.add("vehicle.skirtShare", uncertainty.share, share);
}
