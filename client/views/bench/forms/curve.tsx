import { hasPlate } from "../record/kinds.ts";
import type { FormModel } from "./model.ts";
import { PlateEditor } from "./PlateEditor.tsx";
import { Fields, pick } from "./Sections.tsx";

/** What a curve test asks above its points. */
export function CurveFields({ form }: { readonly form: FormModel }) {
  return (
    <>
      <Fields form={form} fields={pick(form, "rotor", "diameter", "motor", "flowFrom")} />
      {hasPlate(form.spec, form.draft.value.fields) && <PlateEditor form={form} />}
    </>
  );
}
