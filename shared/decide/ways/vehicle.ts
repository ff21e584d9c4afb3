import { around, type Handle, type Setting } from "./handle.ts";

/** Of the present mass. Our choice. */
const [LIGHTEST, HEAVIEST] = [0.2, 5];
/** Wheel friction from wet ice to soft rubber on clean glass. Common practice, no source. */
const [SLIPPERY, GRIPPY] = [0.05, 1.5];

/**
 * The vehicle's mass, and its wheels' friction.
 *
 *     m from a fifth to five times the present;  μ_w 0.05…1.5
 *
 * @param setting - the build [SI]
 * @returns the two handles [kg, -]
 *
 * Valid for a centre of gravity that stays where it is. Source of the limits: common practice, no source
 */
export function vehicleHandles({ build }: Setting): Handle[] {
  const { mass, wheelFriction } = build.vehicle;
  const put = (change: object) => ({ ...build, vehicle: { ...build.vehicle, ...change } }) as typeof build;
  return [
    {
      key: "mass",
      now: mass,
      limits: [LIGHTEST * mass, HEAVIEST * mass],
      whole: false,
      put: (value) => put({ mass: value }),
    },
    {
      key: "wheelFriction",
      now: wheelFriction,
      limits: around(wheelFriction, SLIPPERY, GRIPPY),
      whole: false,
      put: (value) => put({ wheelFriction: value }),
    },
  ];
}
