import type { PredictInput } from "../physics/predict.ts";

/** A frame on no wheels of its own, as a stand or a rig is: nothing that is read off there depends on it. */
export const STAND_FRAME = {
  rollingResistance: 0,
  driven: "both",
  wheelbase: 0.1,
  track: 0.1,
  cgHeight: 0,
  cgFromRear: 0.05,
  suctionFromRear: 0.05,
  jolt: 0,
  jetArea: null,
  jetAngle: 0,
} as const satisfies Partial<PredictInput["vehicle"]>;

/** What a prediction of a rotor's or a propeller's speed on its stand is asked with; its speed depends on none of it. */
export const STAND_VEHICLE: PredictInput["vehicle"] = {
  ...STAND_FRAME,
  mass: 1,
  wheelFriction: 1,
  skirtFriction: 0,
  skirtShare: 0,
};
