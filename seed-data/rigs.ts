import { buildTruth } from "./rigs/buildTruth.ts";
import { curve } from "./rigs/curve.ts";
import { friction } from "./rigs/friction.ts";
import { leak } from "./rigs/leak.ts";
import { motor } from "./rigs/motor.ts";
import { pull } from "./rigs/pull.ts";
import { type Rig, rigOf } from "./rigs/rig.ts";

type AfterRig<F> = F extends (rig: Rig, ...rest: infer R) => unknown ? R : never;

/** The invented test rigs: each call is one bench test of the demo, read off the truth through noisy instruments. */
export function rigs(seed: number) {
  const rig = rigOf(seed);
  return {
    curve: (...of: AfterRig<typeof curve>) => curve(rig, ...of),
    motor: (...of: AfterRig<typeof motor>) => motor(rig, ...of),
    leak: (...of: AfterRig<typeof leak>) => leak(rig, ...of),
    friction: (...of: AfterRig<typeof friction>) => friction(rig, ...of),
    pull: (...of: AfterRig<typeof pull>) => pull(rig, ...of),
    buildTruth,
  };
}
