import { Caution } from "../../../ui/Caution.tsx";
import type { FormModel } from "./model.ts";
import { Fields, pick } from "./Sections.tsx";

/** What a run log asks above its attitudes. */
export function RunLogFields({ form }: { readonly form: FormModel }) {
  return (
    <>
      <Fields form={form} fields={pick(form, "build")} />
      <p class="quiet small">
        One row for each attitude that it met: what it did there, and the pack's voltage then. Without a
        voltage the charge counts, without that the time since it was switched on with a full pack.
      </p>
      <Caution>
        It will fall when the charge ends: tether it, keep people, pets and traffic from under it.
      </Caution>
    </>
  );
}
