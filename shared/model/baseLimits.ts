import { above0, between, count, from0 } from "./limitTree.ts";

/* What one quantity may be wherever it is asked for; limits.ts says where. */

export const PRICE = from0(1e12);
/** Until it is there [days]. */
export const LEAD_TIME = from0(36_500);
/** Of a part [kg]. */
export const MASS = from0(50);
export const FRACTION = between(0, 1);
/** Of one cell at rest [V]. */
export const CELL_VOLTAGE = between(0.1, 10);
export const FRICTION = from0(5);
export const GAP = from0(0.1);
export const DIAMETER = above0(2);
/** On the vehicle, from the rear axle line forwards and over the surface [m]. */
export const PLACE = { fromRear: between(-20, 20), height: from0(20) };
/** Of a part in a stack, or of the space round it [m] */
export const SIZE = { nominal: above0(2), tolerance: from0(0.1) };
/** [°] */
export const INCLINATION = between(0, 180);
export const CELLS = count(1, 60);
export const AIR = {
  temperature: between(253.15, 333.15),
  pressure: between(30e3, 120e3),
  humidity: FRACTION,
} as const;

export const SPEED = above0(3e4);
/** Blocked, it stands. */
export const SPEED_OR_NONE = from0(3e4);
export const SUCTION = above0(1e5);
export const FLOW = from0(10);
export const VOLTAGE = from0(1000);
export const LOADED_VOLTAGE = above0(1000);
export const CURRENT = from0(1000);
export const TORQUE = from0(100);
export const LOAD = from0(1e5);

/** Longest reason that the book keeps [characters]. */
export const LONGEST_REASON = 300;
