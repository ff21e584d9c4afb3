import { hasPlate } from "../record/kinds.ts";
import type { FormModel } from "./model.ts";
import { PlateEditor } from "./PlateEditor.tsx";
import { Fields, pick } from "./Sections.tsx";

/** What a leak test asks above its points. */
export function LeakFields({ form }: { readonly form: FormModel }) {
  return (
    <>
      <Fields form={form} fields={pick(form, "skirt", "surface", "gap", "flowFrom")} />
      <p class="quiet">
        Tape the skirt's listed openings while you read: they stay beside a measured leak and are added to it.
      </p>
      {hasPlate(form.spec, form.draft.value.fields) && <PlateEditor form={form} />}
    </>
  );
}
