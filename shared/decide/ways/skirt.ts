import type { PredictInput } from "../../physics/predict.ts";
import type { SkirtInput } from "../../physics/skirt.ts";
import { around, type Handle, type Setting } from "./handle.ts";

/** Widest gap looked at [m], and how many times the present one. Our choice. */
const [WIDEST, TIMES] = [5e-3, 5];
/** What the model takes at most [m]. */
const MOST_GAP = 0.1;
/** Of the present area. Our choice. */
const [SMALLEST, LARGEST] = [0.5, 2];

/** The same shape, larger: P ∝ √A. */
function scaled(skirt: SkirtInput, area: number): SkirtInput {
  if (area === skirt.area) return skirt;
  return { ...skirt, area, perimeter: skirt.perimeter * Math.sqrt(area / skirt.area) };
}

/**
 * The gap, and the suction area at the same shape.
 *
 *     h 0…5 mm or five times the present;  A from half to twice the present, P ∝ √A
 *
 * @param setting - the build [SI], and its skirt at other gaps where known
 * @returns the handles that mean something [m, m²]: none without a skirt; no gap and no area where a measured leak stands in the gap's place and other gaps are not known
 *
 * Valid for ducted rotors. Source of the limits: geometry, else our choice
 */
export function skirtHandles({ build, skirtAt }: Setting): Handle[] {
  if ("thrust" in build.rotor || !("skirt" in build)) return [];
  const ducted: PredictInput = build;
  const { skirt } = ducted;
  if (skirt.measuredLeak && !skirtAt) return [];
  const atGap = (gap: number) => (gap === skirt.gap ? skirt : (skirtAt?.(gap) ?? { ...skirt, gap }));
  const gap: Handle = {
    key: "gap",
    now: skirt.gap,
    limits: around(skirt.gap, 0, Math.min(MOST_GAP, Math.max(WIDEST, TIMES * skirt.gap))),
    whole: false,
    put: (value) => ({ ...ducted, skirt: atGap(value) }),
  };
  const area: Handle = {
    key: "area",
    now: skirt.area,
    limits: [SMALLEST * skirt.area, LARGEST * skirt.area],
    whole: false,
    put: (value) => ({ ...ducted, skirt: scaled(skirt, value) }),
  };
  return skirt.measuredLeak ? [gap] : [gap, area];
}
