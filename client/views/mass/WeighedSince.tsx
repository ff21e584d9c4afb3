import { useState } from "preact/hooks";
import { type WeighedLine, weighedLines, withWeighed } from "../../../shared/book/mass/weighedLines.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { saveBuild } from "../../state/saveBuild.ts";
import { massText } from "./massWords.ts";

export interface WeighedSinceProps {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
}

/** "Camera: 46.8 g on the scale on 2026-05-12, 48 g here" */
const saidOf = ({ line, mass, date }: WeighedLine): string => {
  const here = line.basis === "missing" ? "not weighed here" : `${massText(line.mass)} here`;
  return `${line.name}: ${massText(mass)} on the scale on ${date}, ${here}`;
};

/** What weigh-ins say of the lines, and the way to take it over. */
export function WeighedSince({ book, build }: WeighedSinceProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const weighed = weighedLines(book, build.data);
  if (weighed.length === 0) return null;
  return (
    <div>
      <p>On the scale these weighed something else:</p>
      <ul>
        {weighed.map((each) => (
          <li key={String(each.line.of)}>
            {saidOf(each)}{" "}
            {typeof each.line.of === "number" ? (
              <button
                type="button"
                class="plain"
                onClick={() => void saveBuild(build, withWeighed(build.data, each)).then(setProblem)}
              >
                take it<span class="visually-hidden"> for {each.line.name}</span>
              </button>
            ) : (
              <a href={href("parts", `${each.line.of}s/${build.data[each.line.of]}`)}>
                its record<span class="visually-hidden"> of {each.line.name}</span>
              </a>
            )}
          </li>
        ))}
      </ul>
      {problem && (
        <p class="field-error" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
