import type { SkirtInput } from "../skirt.ts";
import type { FastCase } from "./fastCase.ts";
import { WARM } from "./newtonWarm.ts";

/** Blasius: f·ℓ/(2h) at one velocity. */
const TURBULENT_POWER = -1.25;

type StandingOff = Pick<SkirtInput, "gap" | "roughness" | "joint">;

/**
 * Writes a skirt's leak at another gap into a case.
 *
 *     v through the lip: area ∝ h, laminar ∝ h^−2, turbulent ∝ h^−1.25, crossing ∝ h^−1;  a measured leak C_L ∝ h^(4x−1);  at h = 0 neither
 *
 * @param c - the case, laid out as {@link WARM}, its openings written; SI
 * @param fast - the leak at the gap as set, SI
 * @param skirt - gap as set and roughness, together above 0, and joint [m]
 * @param gap - h_set [m], ≥ 0
 * @returns whether the lip stands off at it
 *
 * Valid where lip or measured leak stands off as set; as `skirtAtGap` and `asFastCase` give it, to rounding; allocates nothing. Source: docs/method/restriction.md
 */
export function writeLeakAtGap(c: Float64Array, fast: FastCase, skirt: StandingOff, gap: number): boolean {
  const [before, now] = [skirt.gap + skirt.roughness, gap + skirt.roughness];
  writeJoint(c, fast, skirt, now);
  if (now === 0) {
    c[WARM.gapArea] = 0;
    c[WARM.leakCoefficient] = 0;
    c[WARM.leakExponent] = 1;
    return false;
  }
  const ratio = now / before;
  c[WARM.gapArea] = fast.gapArea * ratio;
  c[WARM.gapLaminar] = fast.gapLaminar / (ratio * ratio);
  c[WARM.gapTurbulent] = fast.gapTurbulent * ratio ** TURBULENT_POWER;
  c[WARM.gapCrossing] = fast.gapCrossing / ratio;
  c[WARM.leakExponent] = fast.leakExponent;
  c[WARM.leakCoefficient] =
    fast.leakCoefficient > 0 ? fast.leakCoefficient * ratio ** (4 * fast.leakExponent - 1) : 0;
  return true;
}

function writeJoint(c: Float64Array, fast: FastCase, skirt: StandingOff, height: number): void {
  if (fast.jointArea === 0) return;
  const depth = skirt.joint?.depth ?? 0;
  const over = (height + depth) / (skirt.gap + skirt.roughness + depth);
  c[WARM.jointArea] = fast.jointArea * over;
  c[WARM.jointLaminar] = fast.jointLaminar / (over * over);
  c[WARM.jointTurbulent] = fast.jointTurbulent * over ** TURBULENT_POWER;
  c[WARM.jointCrossing] = fast.jointCrossing / over;
}
