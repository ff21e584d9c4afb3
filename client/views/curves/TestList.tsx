import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { counted } from "../../ui/count.ts";
import { dayText } from "../../ui/moment.ts";
import { asideRows } from "./setAside.ts";
import { testName } from "./typed.ts";

const KIND = {
  curve: "curve",
  pull: "pull",
  motor: "motor",
  leak: "leak",
  friction: "friction",
  thrust: "thrust",
  discharge: "discharge",
  "ride-height": "ride height",
  "weigh-in": "weigh-in",
  "run-log": "run log",
} as const;

/** The tests that a page rests on, each a way to the Bench. */
export function TestList({ tests }: { tests: readonly StoredOf<"tests">[] }) {
  return (
    <section>
      <h2>Tests</h2>
      <ul class="curves-list">
        {tests.map((test) => {
          const used = test.data.rows.length - asideRows(test.data).length;
          return (
            <li key={test.id}>
              <a href={href("bench", test.id)}>{testName(test)}</a>
              <span class="quiet small">
                {" "}
                {KIND[test.data.kind]}, {dayText(test.data.date)}, {counted(used, "row")} used
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
