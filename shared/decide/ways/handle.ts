import type { RotorInput } from "../../physics/point/machine.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import type { CellInput } from "../../physics/rundown.ts";
import type { SkirtInput } from "../../physics/skirt.ts";
import type { Line } from "./reach.ts";

/** One thing that a maker can change. */
export interface Handle extends Line {
  readonly key: "diameter" | "series" | "cellVoltage" | "duty" | "gap" | "area" | "mass" | "wheelFriction";
  /** the build with this one thing changed; unchanged parts are the same objects */
  readonly put: (value: number) => AnyPredictInput;
}

/** A build, and what is known about its parts at other sizes. */
export interface Setting {
  readonly build: AnyPredictInput;
  /** of the pack; null: not known */
  readonly cell: CellInput | null;
  /** a ducted rotor at another diameter [m], where its curve was tested included; else the same curve at that diameter */
  readonly rotorAt?: (diameter: number) => RotorInput;
  /** the skirt at another gap [m], a leak measured there included; else the same skirt with that gap */
  readonly skirtAt?: (gap: number) => SkirtInput;
}

/** @returns limits that hold the present value as well [unit of the handle] */
export function around(now: number, low: number, high: number): readonly [number, number] {
  return [Math.min(now, low), Math.max(now, high)];
}
