import type { LeftOut } from "../../shared/book/leftOut/leftOut.ts";
import { listed } from "../../shared/decide/verdict/attitudeWords.ts";
import type { Answer } from "../../shared/numeric/errors.ts";
import { href } from "../app/router.ts";
import { KIND_WORDS } from "./kindWords.ts";

/** @returns the test's title, or its kind and day where it has none */
function nameOf({ title, kind, date }: LeftOut): string {
  return title === "" ? `${KIND_WORDS[kind]} of ${date}` : title;
}

/** @returns ", row 4" or ", rows 2, 4 and 5"; "" of a whole test */
function rowsText(rows: readonly number[]): string {
  if (rows.length === 0) return "";
  return `, ${rows.length === 1 ? "row" : "rows"} ${listed(rows.map((row) => String(row + 1)))}`;
}

const ended = (text: string): string => text.replace(/\.?$/, ".");

/** Tests of these parts that no figure here rests on, each with a link and the reason; nothing where every test is in use. */
export function LeftOutTests({ tests }: { readonly tests: Answer<readonly LeftOut[]> }) {
  if ("problem" in tests) return <p class="field-error">{tests.problem}</p>;
  if (tests.answered.length === 0) return null;
  return (
    <section class="left-out">
      <h2>Left out</h2>
      <ul class="rests">
        {tests.answered.map((test) => (
          <li key={`${test.id} ${test.why}`}>
            <a href={href("bench", test.id)}>{nameOf(test)}</a>
            {rowsText(test.rows)}: {ended(test.why)}
          </li>
        ))}
      </ul>
    </section>
  );
}
