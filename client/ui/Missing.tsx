import type { Missing as MissingPart } from "../../shared/book/resolve.ts";
import { href } from "../app/router.ts";
import type { Outcome } from "../state/outcome.ts";
import { Problem } from "./Problem.tsx";

const TEST_WORDS = {
  curve: "Log a curve test",
  pull: "Log a pull test",
  motor: "Log a motor test",
  leak: "Log a leak test",
  friction: "Log a friction test",
  thrust: "Log a thrust test",
  discharge: "Log a discharge test",
  "ride-height": "Log a ride-height test",
  "weigh-in": "Log a weigh-in",
  "run-log": "Log a run",
} as const;

function Line({ part, build }: { part: MissingPart; build: string }) {
  return (
    <li>
      <p>{part.message}</p>
      {part.test ? (
        <a class="button" href={href("bench", `new/${part.test}`)}>
          {TEST_WORDS[part.test]}
        </a>
      ) : (
        <a class="button" href={href("parts", `builds/${build}`)}>
          Choose another part
        </a>
      )}
    </li>
  );
}

/** What a build still lacks, and the test that gives it. */
export function Missing({ outcome, build }: { outcome: Outcome; build: string }) {
  if (outcome.problem) return <Problem message={outcome.problem} />;
  return (
    <ul class="missing">
      {outcome.resolved?.missing.map((part) => (
        <Line key={part.path} part={part} build={build} />
      ))}
    </ul>
  );
}
