import { href } from "../../app/router.ts";

export interface BroughtTest {
  readonly id: string;
  readonly title: string;
  /** how many readings, what share, what would change without it: a line each */
  readonly lines: readonly string[];
}

/** What each test brought to a fit. */
export function Brought({ title, tests }: { title: string; tests: readonly BroughtTest[] }) {
  if (tests.length === 0) return null;
  return (
    <section>
      <h2>{title}</h2>
      <ul class="curves-list">
        {tests.map(({ id, title, lines }) => (
          <li key={id}>
            <a href={href("bench", id)}>{title}</a>
            {lines.map((line) => (
              <div key={line} class="quiet small">
                {line}
              </div>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}
