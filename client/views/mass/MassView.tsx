import { useMemo, useState } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { isChanged, isLacking } from "../../state/outcome.ts";
import { triedToQuery, withTried } from "../../state/partsTried.ts";
import { saveBuild } from "../../state/saveBuild.ts";
import { useOutcomes } from "../../state/useOutcomes.ts";
import { Answer } from "../../ui/Answer.tsx";
import { BuildOnScreen } from "../../ui/BuildOnScreen.tsx";
import { Caution } from "../../ui/Caution.tsx";
import { Missing } from "../../ui/Missing.tsx";
import { useSaid } from "../../ui/useSaid.ts";
import { VerdictMarks } from "../../ui/VerdictMarks.tsx";
import { VerdictLine } from "../../ui/verdict/VerdictLine.tsx";
import { Warnings } from "../../ui/Warnings.tsx";
import { ShowWorking } from "../../ui/working/ShowWorking.tsx";
import { BalanceSection } from "./balance/BalanceSection.tsx";
import { headroomBoard, headroomOf } from "./headroom.ts";
import { MassHistory } from "./history/MassHistory.tsx";
import { LedgerSection } from "./LedgerSection.tsx";
import { MassChart } from "./MassChart.tsx";
import { headroomSentence, massFigures } from "./massWords.ts";
import { Swaps } from "./swaps/Swaps.tsx";
import { type Typing, withTyped } from "./typing.ts";

/** Does it weigh too much? The ledger of a build against what it may weigh on each attitude. */
export default function MassView() {
  return (
    <BuildOnScreen>{(book, build) => <MassOf key={build.id} book={book} build={build} />}</BuildOnScreen>
  );
}

interface OfBuild {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
}

function MassOf({ book, build }: OfBuild) {
  const [typing, setTyping] = useState<Typing | null>(null);
  const { tried } = useOutcomes(build);
  const asTried = useMemo(() => withTried(book, build.data, tried), [book, build, tried]);
  const asTyped = useMemo(
    () => withTried(book, withTyped(build.data, typing), tried),
    [book, build, typing, tried],
  );
  const shown = useMemo(() => headroomOf(book, asTyped), [book, asTyped]);
  useSaid(headroomSentence(shown));
  return (
    <div class="page page-halves">
      <div class="page-head">
        <VerdictLine build={build.id} target={asTried.targetMargin} />
        <Answer sentence={headroomSentence(shown)}>
          {massFigures(shown)}
          <VerdictMarks book={book} outcome={shown.outcome} />
        </Answer>
        {isChanged(tried) && (
          <p class="small">
            With what is <a href={href("match", build.id, triedToQuery(tried))}>tried in Match</a>, not as the
            build is stored.
          </p>
        )}
      </div>
      <section class="page-main" aria-label="The picture">
        <MassChart of={shown} />
        {shown.allowed.length > 0 && (
          <ShowWorking
            listed={(title) => /^mass (allowed|left|on board)/.test(title)}
            of={() => headroomBoard(book, asTyped, shown)}
          />
        )}
        <Swaps book={book} build={build} shown={asTried} />
        <BalanceSection book={book} shown={asTyped} build={build} onSave={(data) => saveBuild(build, data)} />
        <MassHistory book={book} build={build} />
        {isLacking(shown.outcome) && <Missing outcome={shown.outcome} build={build.id} />}
        <Warnings outcome={shown.outcome} />
        <Caution>
          A vehicle on a wall or ceiling falls when the charge ends: tether it, keep people, pets and traffic
          from under it, never above passers-by.
        </Caution>
      </section>
      <LedgerSection
        book={book}
        build={build}
        asTyped={asTyped}
        shown={shown}
        typing={typing}
        onTyping={setTyping}
      />
    </div>
  );
}
