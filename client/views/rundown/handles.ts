import { BUILD, KEPT_SUCTION, KEPT_THRUST, LEAST_TRIED_CHARGE } from "../../../shared/model/limits.ts";
import type { NumberSpec } from "../../../shared/units/readNumber.ts";

/** State of charge when it is set down. */
export const START_CHARGE = {
  dimension: "fraction",
  limits: { ...BUILD.charge, min: LEAST_TRIED_CHARGE },
  example: "100 %",
} as const satisfies NumberSpec;

export const TARGET_MARGIN = {
  dimension: null,
  suffix: "×",
  limits: BUILD.targetMargin,
  example: "1.5",
} as const satisfies NumberSpec;

/** Suction that a controller is told to keep. */
export const KEPT_PRESSURE = {
  dimension: "pressure",
  limits: KEPT_SUCTION,
  example: "1200 Pa",
} as const satisfies NumberSpec;

/** Thrust likewise, of an open propeller. */
export const KEPT_FORCE = {
  dimension: "load",
  limits: KEPT_THRUST,
  example: "250 g",
} as const satisfies NumberSpec;

/** A part's share of the time, and what its drive draws there. */
export const SHARE = {
  dimension: "fraction",
  limits: BUILD.cycle.share,
  example: "40 %",
} as const satisfies NumberSpec;

export const DRIVE_CURRENT = {
  dimension: "current",
  limits: BUILD.cycle.driveCurrent,
  example: "0.8 A",
} as const satisfies NumberSpec;
