import type { StoredOf } from "../../../shared/model/record.ts";
import { asideRows } from "./setAside.ts";
import { testName } from "./typed.ts";

export interface AsideListProps {
  readonly tests: readonly StoredOf<"tests">[];
  readonly onChoose: (key: string) => void;
}

/** The readings that stay in the book but not in the fit, and why. */
export function AsideList({ tests, onChoose }: AsideListProps) {
  const rows = tests.flatMap((test) => asideRows(test.data).map((aside) => ({ test, ...aside })));
  if (rows.length === 0) return null;
  return (
    <section>
      <h2>Set aside</h2>
      <ul class="curves-list">
        {rows.map(({ test, row, reason }) => (
          <li key={`${test.id}#${row}`}>
            <button type="button" class="plain" onClick={() => onChoose(`${test.id}#${row}`)}>
              {testName(test)}, row {row + 1}
            </button>
            <span class="quiet"> “{reason}”</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
