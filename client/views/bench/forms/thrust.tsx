import { Caution } from "../../../ui/Caution.tsx";
import type { FormModel } from "./model.ts";
import { Fields, pick } from "./Sections.tsx";

/** What a thrust test asks above its readings. */
export function ThrustFields({ form }: { readonly form: FormModel }) {
  return (
    <>
      <Fields form={form} fields={pick(form, "rotor", "diameter", "motor")} />
      <p class="quiet small">
        Change the speed by the supply's voltage, at full throttle: at part throttle the current in the lead
        is not the motor's, and the row tells of the thrust alone.
      </p>
      <Caution>
        An open propeller cuts: bolt the stand down, stay out of its plane, goggles on, first run-up behind a
        screen. Keep a clear diameter of air before and behind it.
      </Caution>
    </>
  );
}
