import type { ComponentType } from "preact";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { CurveFields } from "./curve.tsx";
import { DischargeFields } from "./discharge.tsx";
import { FrictionFields } from "./friction.tsx";
import { LeakFields } from "./leak.tsx";
import type { FormModel } from "./model.ts";
import { MotorFields } from "./motor.tsx";
import { type PadProps, PullPad } from "./pad/PullPad.tsx";
import { PullFields } from "./pull.tsx";
import { RideHeightFields } from "./rideHeight.tsx";
import { RunLogFields } from "./runLog.tsx";
import { ThrustFields } from "./thrust.tsx";
import { WeighInFields } from "./weighIn.tsx";

/** What each kind of test asks above its rows. */
export const KIND_FIELDS: Readonly<Record<TestKind, ComponentType<{ readonly form: FormModel }>>> = {
  curve: CurveFields,
  pull: PullFields,
  motor: MotorFields,
  leak: LeakFields,
  friction: FrictionFields,
  thrust: ThrustFields,
  discharge: DischargeFields,
  "ride-height": RideHeightFields,
  "weigh-in": WeighInFields,
  "run-log": RunLogFields,
};

/** What takes a new test's readings on a phone, one tap each, in front of the table. */
export const KIND_PADS: { readonly [K in TestKind]?: ComponentType<PadProps> } = { pull: PullPad };
