import type { SkirtInput } from "../../physics/skirt.ts";
import type { Case } from "./judge.ts";

/** A setting that a way out may move. */
export type Setting = "throttle" | "cells" | "mass" | "gap";

/** A build in either of its forms: as a prediction takes it, or with its cell. */
type Either = Case["build"] | Case["limits"]["build"];

function skirtOf(build: Either): SkirtInput | null {
  return ("skirt" in build ? (build.skirt as SkirtInput | null | undefined) : null) ?? null;
}

/** @returns what a setting stands at: δ [-], N_s [-], m [kg], h_set [m]; null where the build has no such setting, or its leak was measured at this gap alone */
export function settingOf({ build }: Case, setting: Setting): number | null {
  if (setting === "throttle") return build.supply.duty;
  if (setting === "cells") return build.pack.series;
  if (setting === "mass") return build.vehicle.mass;
  const skirt = skirtOf(build);
  return skirt && !skirt.measuredLeak ? skirt.gap : null;
}

/** The part of a build that a setting moves. */
function moved(build: Either, setting: Setting, value: number): object {
  if (setting === "throttle") return { supply: { ...build.supply, duty: value } };
  if (setting === "cells") return { pack: { ...build.pack, series: value } };
  if (setting === "mass") return { vehicle: { ...build.vehicle, mass: value } };
  return { skirt: { ...skirtOf(build), gap: value } };
}

/**
 * A case with one setting moved, all else as it stands.
 *
 *     δ, N_s, m or h_set in the build and in its limits alike
 *
 * @param of - the case [SI]
 * @param setting - which
 * @param value - of the setting [-, kg or m]
 * @returns the case at that value
 *
 * Valid for settings that {@link settingOf} knows, and values that the model takes. Source: definition
 */
export function withSetting(of: Case, setting: Setting, value: number): Case {
  const { build, limits } = of;
  return {
    ...of,
    build: { ...build, ...moved(build, setting, value) } as Case["build"],
    limits: { ...limits, build: { ...limits.build, ...moved(limits.build, setting, value) } },
  };
}
