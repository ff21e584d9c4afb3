import type { FormSpec } from "./spec.ts";
import { buildForm } from "./specs/build.ts";
import { gearForm } from "./specs/gear.ts";
import { instrumentForm } from "./specs/instrument.ts";
import { motorForm } from "./specs/motor.ts";
import { packForm } from "./specs/pack.ts";
import { plateForm } from "./specs/plate.ts";
import { rotorForm } from "./specs/rotor.ts";
import { skirtForm } from "./specs/skirt.ts";
import { surfaceForm } from "./specs/surface.ts";

/** Every collection that has a form here, in the order in which a bench fills. */
export const FORMS: readonly FormSpec[] = [
  rotorForm,
  motorForm,
  packForm,
  skirtForm,
  surfaceForm,
  gearForm,
  buildForm,
  instrumentForm,
  plateForm,
];
