import { z } from "zod";
import type { Inlined } from "./common.ts";
import { curveTest } from "./curve.ts";
import { dischargeTest } from "./discharge.ts";
import { frictionTest } from "./friction.ts";
import { leakTest } from "./leak.ts";
import { motorTest } from "./motor.ts";
import { pullTest } from "./pull.ts";
import { rideHeightTest } from "./rideHeight.ts";
import { runLogTest } from "./runLog.ts";
import { thrustTest } from "./thrust.ts";
import { weighInTest } from "./weighIn.ts";

/** A bench test of any kind. A new kind is one more file here and one more line in this union. */
export const benchTest = z.discriminatedUnion("kind", [
  curveTest,
  pullTest,
  motorTest,
  leakTest,
  frictionTest,
  thrustTest,
  dischargeTest,
  rideHeightTest,
  weighInTest,
  runLogTest,
]);

/** As the book keeps it: its instruments and its plate may be named. */
export type BenchTest = z.output<typeof benchTest>;
/** As fits read it. */
export type InlinedTest = Inlined<BenchTest>;
export type TestKind = BenchTest["kind"];
