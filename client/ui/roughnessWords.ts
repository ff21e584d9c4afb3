import type { SurfaceRoughness } from "../../shared/book/roughnessBasis.ts";
import { counted } from "./count.ts";

const MICROMETRES = 1e6;
/** Below this an uncertainty reads as this: heights of a lip are micrometres. */
const LEAST_SHOWN = 1;

/** @returns "148 ± 6 µm" */
export function micrometres(value: number, sd: number | null): string {
  const spread = sd === null ? "" : ` ± ${Math.round(Math.max(LEAST_SHOWN, sd * MICROMETRES))}`;
  return `${Math.round(value * MICROMETRES)}${spread}\u202fµm`;
}

/** @returns "115 ± 7 µm, measured separately by 2 leak tests (stated 120 µm)"; null where it is only stated, or no law takes it */
export function roughnessWords(roughness: SurfaceRoughness | null, stated: number): string | null {
  if (roughness?.basis !== "measured separately") return null;
  const { value, sd, testIds } = roughness;
  const told = `measured separately by ${counted(testIds.length, "leak test")}`;
  return `${micrometres(value, sd)}, ${told} (stated ${micrometres(stated, null)})`;
}
