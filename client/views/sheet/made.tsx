import type { Book } from "../../../shared/book/resolve.ts";
import type { Outcome } from "../../state/outcome.ts";
import { Basis } from "../../ui/RestsOn.tsx";
import { partRows } from "./partRows.ts";
import { testRows } from "./testRows.ts";

interface Props {
  readonly book: Book;
  readonly outcome: Outcome;
}

/** What it is made of, where it works, and the figures that were taken of it. */
export function PartsSection({ book, outcome }: Props) {
  return (
    <section aria-label="What it is made of">
      <h2>What it is made of</h2>
      <table class="sheet-table">
        <tbody>
          {partRows(book, outcome).map(({ what, name, figures }) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td>
                {name && <strong>{name}</strong>}
                {figures.map((figure) => (
                  <small key={figure}>{figure}</small>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The tests that its figures are based on, with their days; what of it is scaled, stated, estimated or left out. */
export function TestsSection({ book, outcome }: Props) {
  const rows = testRows(book, outcome.resolved?.tests ?? []);
  return (
    <section aria-label="What it is based on">
      <h2>Based on</h2>
      {rows.length === 0 && <p>No test yet: every figure is stated or estimated.</p>}
      <table class="sheet-table">
        <tbody>
          {rows.map(({ kind, count, days }) => (
            <tr key={kind}>
              <th scope="row">{count}</th>
              <td>{days}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Basis book={book} outcome={outcome} />
    </section>
  );
}
