import type { FormModel } from "./model.ts";
import { Fields, pick } from "./Sections.tsx";

/** What a ride-height test asks above its readings. */
export function RideHeightFields({ form }: { readonly form: FormModel }) {
  return (
    <>
      <Fields form={form} fields={pick(form, "gear")} />
      <p class="quiet small">
        Fan off, on a flat plate. Slide feeler gauges under the lip with the vehicle alone, 0 g, then with
        weights on it, over its middle. Two loads are enough, three show whether the line is straight. A scale
        that lifts part of it counts as a load below 0.
      </p>
    </>
  );
}
