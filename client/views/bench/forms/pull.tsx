import { currentBook } from "../../../state/book.ts";
import { Caution } from "../../../ui/Caution.tsx";
import { shownText } from "../record/names.ts";
import type { FormModel } from "./model.ts";
import { Fold, pick } from "./Sections.tsx";

const PARTS = ["rotor", "diameter", "motor", "pack", "skirt", "surface"] as const;
const SETTING = ["direction", "rigMass", "duty", "charge"] as const;

const isWhole = ({ draft }: FormModel): boolean =>
  [...PARTS, "rigMass", "duty"].every((key) => draft.value.fields[key]);

/** The set-up in one line, so that a pull taken with another one is noticed. */
function setUpWords(form: FormModel): string {
  const { fields } = form.draft.value;
  const show = shownText(form.spec, currentBook.value);
  const shown = (key: string) => show(key, fields[key] ?? "");
  const rig = fields.rigMass ? `rig ${fields.rigMass}` : "";
  const words = [...PARTS.map(shown), shown("direction"), rig, fields.duty].filter(Boolean).join(" · ");
  return isWhole(form) ? words : [words, "not all is chosen yet"].filter(Boolean).join(" – ");
}

/** What a pull test asks above its pulls: the set-up, folded away once it is known, so that the loads come first. */
export function PullFields({ form }: { readonly form: FormModel }) {
  return (
    <>
      <Fold
        form={form}
        title="Set-up"
        says={setUpWords(form)}
        fields={pick(form, ...PARTS, ...SETTING)}
        starts={!isWhole(form)}
      />
      <Caution>
        Hang the load low over something soft; keep hands out of the rotor's plane, feet and pets from under
        the load.
      </Caution>
    </>
  );
}
