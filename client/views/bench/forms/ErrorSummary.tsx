import type { RefObject } from "preact";
import { anchorOf, goToField } from "../../../ui/anchor.ts";
import { summaryOf } from "../record/fieldErrors.ts";
import type { FormModel } from "./model.ts";

interface ErrorSummaryProps {
  readonly form: FormModel;
  readonly box: RefObject<HTMLDivElement | null>;
}

/** After a refusal: all that is wrong, each line leading to its field. Nothing that was typed is lost. */
export function ErrorSummary({ form, box }: ErrorSummaryProps) {
  const lines = form.submitted.value ? summaryOf(form.shown.value, form.draft.value) : [];
  if (lines.length === 0 && !form.problem.value) return null;
  const count = lines.length === 1 ? "one field needs" : `${lines.length} fields need`;
  return (
    <div class="problem bench-summary" role="alert" tabIndex={-1} ref={box}>
      <p>
        {lines.length > 0
          ? `Not saved yet: ${count} another look. What you typed is kept.`
          : form.problem.value}
      </p>
      {lines.length > 0 && (
        <ul>
          {lines.map(({ path, label, message }) => (
            <li key={path}>
              <a
                href={`#${anchorOf(path)}`}
                onClick={(event) => {
                  event.preventDefault();
                  goToField(path);
                }}
              >
                {label}
              </a>
              : {message}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
