import type { FormModel } from "./model.ts";
import { Fields, pick } from "./Sections.tsx";

/** What a friction test asks above its slides; which skirt, only where it was a skirt that slid. */
export function FrictionFields({ form }: { readonly form: FormModel }) {
  const isSkirt = form.draft.value.fields.contact === "skirt";
  return <Fields form={form} fields={pick(form, "surface", "contact", ...(isSkirt ? ["skirt"] : []))} />;
}
