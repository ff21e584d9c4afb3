import type { FormModel } from "./model.ts";
import { Fields, pick } from "./Sections.tsx";

/** What a motor test asks above its runs. */
export function MotorFields({ form }: { readonly form: FormModel }) {
  return <Fields form={form} fields={pick(form, "motor", "resistance")} />;
}
