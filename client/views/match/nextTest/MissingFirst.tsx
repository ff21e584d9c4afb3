import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { href } from "../../../app/router.ts";
import type { Outcome } from "../../../state/outcome.ts";

interface MissingFirstProps {
  readonly outcome: Outcome;
  /** of the stored build */
  readonly id: string;
}

/** Of a build without numbers: the tests that it lacks are the next ones; nothing is in doubt before there is an answer. */
export function MissingFirst({ outcome, id }: MissingFirstProps) {
  const missing = outcome.resolved?.missing ?? [];
  const kinds = [...new Set(missing.flatMap(({ test }) => test ?? []))];
  if (kinds.length === 0)
    return (
      <p>
        There is no answer to be in doubt yet: <a href={href("parts", `builds/${id}`)}>correct the build</a>{" "}
        first.
      </p>
    );
  return (
    <p>
      What is missing comes first:{" "}
      {kinds.map((kind, i) => (
        <span key={kind}>
          {i > 0 && ", "}
          <TestLink kind={kind} />
        </span>
      ))}
      .
    </p>
  );
}

function TestLink({ kind }: { kind: TestKind }) {
  return <a href={href("bench", `new/${kind}`)}>log a {kind} test</a>;
}
