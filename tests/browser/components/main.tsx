import { render } from "preact";
import { Explanation } from "#client/ui/explain/Explanation.tsx";
import { CHARTS } from "./charts.tsx";
import { FIELDS } from "./fields.tsx";
import { MESSAGES } from "./messages.tsx";
import type { Shown } from "./shown.ts";
import { TABLES } from "./tables.tsx";
import { VERDICTS } from "./verdicts.tsx";
import { WORDS } from "./words.tsx";

/** Every component that needs no build, in every state that it has; figures and names are invented. */
const ALL: readonly Shown[] = [...VERDICTS, ...MESSAGES, ...WORDS, ...FIELDS, ...TABLES, ...CHARTS];

const root = document.getElementById("app");
if (!root) throw new Error("The page has no #app to draw into.");
render(
  <main>
    {ALL.map(({ component, state, drawn }) => (
      <article key={`${component} ${state}`} data-component={component} aria-label={`${component}, ${state}`}>
        <p class="small quiet">
          {component}: {state}
        </p>
        {drawn}
      </article>
    ))}
    <Explanation />
  </main>,
  root,
);
