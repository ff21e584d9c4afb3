import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { currentBook } from "../../state/book.ts";
import { columnsOf, KINDS } from "../../views/bench/record/kinds.ts";
import { writeDraft } from "../../views/bench/record/writeDraft.ts";
import { KIND_WORDS } from "../kindWords.ts";
import { dayText } from "../moment.ts";

/** A test's rows as they were typed, those set aside with the reason. */
function Rows({ test }: { readonly test: StoredOf<"tests"> }) {
  const draft = writeDraft(test.data, currentBook.value ?? undefined);
  const columns = columnsOf(KINDS[test.data.kind], draft.fields).filter(({ key }) =>
    draft.rows.some(({ cells }) => cells[key]),
  );
  return (
    <div class="data-table-scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">#</th>
            {columns.map(({ key, label }) => (
              <th key={key} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {draft.rows.map(({ key, cells, aside }, i) => (
            <tr key={key}>
              <th scope="row">{i + 1}</th>
              {columns.map((column) => (
                <td key={column.key}>{cells[column.key]}</td>
              ))}
              {aside !== null && <td class="quiet">set aside: {aside}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The tests that a number comes from, each with its raw readings and a way to it. */
export default function Readings({ tests }: { readonly tests: readonly string[] }) {
  const found = (currentBook.value?.tests ?? []).filter(({ id }) => tests.includes(id));
  return (
    <ul class="working-tests">
      {found.map((test) => (
        <li key={test.id}>
          <details>
            <summary>
              {test.data.title || KIND_WORDS[test.data.kind]}, {dayText(test.data.date)}
            </summary>
            <Rows test={test} />
            <p>
              <a href={href("bench", test.id)}>Open this {KIND_WORDS[test.data.kind]}</a>
            </p>
          </details>
        </li>
      ))}
    </ul>
  );
}
