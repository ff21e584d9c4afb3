import type { FormModel } from "./model.ts";
import { Fields, pick } from "./Sections.tsx";

/** What a discharge test asks above its readings. */
export function DischargeFields({ form }: { readonly form: FormModel }) {
  return (
    <>
      <Fields form={form} fields={pick(form, "pack", "across", "end")} />
      <p class="quiet small">
        Start full, read at ten or more charges, rest a minute now and then and read at 0 A as well: rests
        tell the cell's resistance. Attended, never below the maker's minimum; stop if swollen or hot.
      </p>
    </>
  );
}
