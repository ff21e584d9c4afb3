import { bench } from "../../../state/bench.ts";
import { Caution } from "../../../ui/Caution.tsx";
import type { FormModel } from "./model.ts";
import { Fields, Fold, pick } from "./Sections.tsx";

const PARTS = ["rotor", "diameter", "motor", "pack", "skirt", "surface"] as const;

const areGiven = (form: FormModel): boolean => PARTS.every((key) => form.draft.value.fields[key]);

function partWords(form: FormModel): string {
  const book = bench.value;
  const { fields } = form.draft.value;
  const words = pick(form, ...PARTS).map((field) => {
    const text = fields[field.key] ?? "";
    if (field.type !== "part" || !book) return text;
    return book[field.collection].find(({ id }) => id === text)?.data.name ?? "";
  });
  const given = words.filter(Boolean).join(" · ");
  return areGiven(form) ? given : [given, "not all are chosen yet"].filter(Boolean).join(" – ");
}

/** What a pull test asks above its pulls: the parts folded away once they are known, so that the loads come first. */
export function PullFields({ form }: { readonly form: FormModel }) {
  return (
    <>
      <Fold
        form={form}
        title="Parts"
        says={partWords(form)}
        fields={pick(form, ...PARTS)}
        starts={!areGiven(form)}
      />
      <Fields form={form} fields={pick(form, "direction", "rigMass", "duty", "charge")} />
      <Caution>Hang the load low over something soft, and keep feet and pets from under it.</Caution>
    </>
  );
}
