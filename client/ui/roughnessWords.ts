import type { SurfaceRoughness } from "../../shared/book/roughnessBasis.ts";
import { figureIn, withUnit } from "../../shared/units/format.ts";
import { unitOf } from "../../shared/units/showing.ts";
import { counted } from "./count.ts";

/** Below this an uncertainty reads as this: heights of a lip are micrometres [m]. */
const LEAST_SHOWN = 1e-6;

/** @returns "148 ± 6 µm" */
export function roughnessText(value: number, sd: number | null): string {
  const spread = sd === null ? "" : ` ± ${figureIn(Math.max(LEAST_SHOWN, sd), "roughness", 0)}`;
  return withUnit(figureIn(value, "roughness", 0) + spread, unitOf("roughness"));
}

/** @returns "measured separately by 2 leak tests (stated 120 µm)" */
export function separatelyWords({ testIds }: Pick<SurfaceRoughness, "testIds">, stated: number): string {
  const told = `measured separately by ${counted(testIds.length, "leak test")}`;
  return `${told} (stated ${roughnessText(stated, null)})`;
}
