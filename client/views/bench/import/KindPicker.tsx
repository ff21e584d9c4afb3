import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { Field } from "../../../ui/Field.tsx";
import { KIND_ORDER, KINDS } from "../record/kinds.ts";

interface KindPickerProps {
  readonly kind: TestKind;
  readonly onChange: (kind: TestKind) => void;
}

/** Which kind of test the file holds. */
export function KindPicker({ kind, onChange }: KindPickerProps) {
  return (
    <div class="bench-fields">
      <div class="bench-field">
        <Field label="Kind of test" hint="an exported file says it itself">
          {(input) => (
            <select
              {...input}
              value={kind}
              onChange={(event) => {
                const next = KIND_ORDER.find((known) => known === event.currentTarget.value);
                if (next) onChange(next);
              }}
            >
              {KIND_ORDER.map((known) => (
                <option key={known} value={known}>
                  {KINDS[known].name}
                </option>
              ))}
            </select>
          )}
        </Field>
      </div>
    </div>
  );
}
