import { WEIGHED_PARTS } from "../../../../shared/model/tests/weighIn.ts";
import type { FormModel } from "./model.ts";
import { Fields, pick } from "./Sections.tsx";

/** What a weigh-in asks above its readings. */
export function WeighInFields({ form }: { readonly form: FormModel }) {
  const { weighed, rotor } = form.draft.value.fields;
  const parts = WEIGHED_PARTS.flatMap((key) => (key === "rotor" && rotor ? [key, "diameter"] : [key]));
  return (
    <>
      <Fields
        form={form}
        fields={pick(form, "weighed", ...(weighed === "build" ? ["build"] : [...parts, "what"]))}
      />
      <p class="quiet small">
        {weighed === "build"
          ? "Everything on board: pack, cover, screws, wires. What it weighs can then be taken over as the build's mass."
          : "Zero the scale with what it stands in."}{" "}
        Take it off and put it on again for a second reading: their scatter shows what the scale is worth.
      </p>
    </>
  );
}
