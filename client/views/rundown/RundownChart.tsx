import { Figure } from "../../charts/Figure.tsx";
import { stackHeight, stackPicture } from "../../charts/stack.ts";
import type { Answered } from "./answer.ts";
import { momentWords } from "./momentWords.ts";
import { panelsOf } from "./panels.ts";
import { pictureSentence } from "./rundownWords.ts";
import { rundownTable } from "./table.ts";

/** The run's charts over the same minutes, read along the time. */
export function RundownChart({ answered, build }: { answered: Answered; build: string }) {
  const panels = panelsOf(answered);
  return (
    <Figure
      sentence={pictureSentence(answered, build)}
      picture={stackPicture(panels)}
      height={stackHeight(panels)}
      name={`run-down ${build}`}
      table={() => rundownTable(answered)}
      reading={{ label: "Moments of the run", describe: (key) => momentWords(answered, key) }}
    >
      <p class="quiet small">
        Above the dotted line at 1 the pull is enough while it drives nose uphill, below it lets go; a ring
        marks where. Parked it is enough at least as long.
      </p>
    </Figure>
  );
}
