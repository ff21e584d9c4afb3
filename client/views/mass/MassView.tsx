import { useMemo, useState } from "preact/hooks";
import { balanceOf } from "../../../shared/book/mass/balance.ts";
import { massBoard } from "../../../shared/book/mass/workings.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import type { Build } from "../../../shared/model/build.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { isChanged, isLacking } from "../../state/outcome.ts";
import { triedToQuery, withTried } from "../../state/partsTried.ts";
import { saveBuild } from "../../state/saveBuild.ts";
import { useOutcomes } from "../../state/useOutcomes.ts";
import { Answer } from "../../ui/Answer.tsx";
import { BuildOnScreen } from "../../ui/BuildOnScreen.tsx";
import { Caution } from "../../ui/Caution.tsx";
import { downloadText } from "../../ui/download.ts";
import { Missing } from "../../ui/Missing.tsx";
import { toCsv } from "../../ui/table.ts";
import { VerdictMarks } from "../../ui/VerdictMarks.tsx";
import { VerdictLine } from "../../ui/verdict/VerdictLine.tsx";
import { Warnings } from "../../ui/Warnings.tsx";
import { ShowWorking } from "../../ui/working/ShowWorking.tsx";
import { BalanceSection } from "./balance/BalanceSection.tsx";
import { type Headroom, headroomBoard, headroomOf } from "./headroom.ts";
import { MassHistory } from "./history/MassHistory.tsx";
import { LedgerTable } from "./LedgerTable.tsx";
import { LineForm } from "./LineForm.tsx";
import { ledgerTable } from "./ledgerCsv.ts";
import {
  draftOfLine,
  EMPTY_LINE,
  type LineDraft,
  readLine,
  withBooked,
  withLine,
  withoutLine,
} from "./line.ts";
import { MassChart } from "./MassChart.tsx";
import { forgottenSentence, headroomSentence, massFigures, unaccountedSentence } from "./massWords.ts";
import { Swaps } from "./swaps/Swaps.tsx";
import { WeighedSince } from "./WeighedSince.tsx";
import { WholeMass } from "./WholeMass.tsx";

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

/** A line that is typed, and whose place it takes; null: a new one. */
interface Typing {
  readonly draft: LineDraft;
  readonly at: number | null;
}

const othersOf = ({ ledger }: Build, at: number | null) => ledger.filter((_, i) => i !== at);

/** @returns the build as it would be with the line that is typed, as soon as that can be read */
function withTyped(build: Build, typing: Typing | null): Build {
  const read = typing && readLine(typing.draft, othersOf(build, typing.at));
  return typing && read && "line" in read ? withLine(build, read.line, typing.at) : build;
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
  return (
    <div class="page page-halves">
      <div class="page-head" aria-live="polite">
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

/** Less than half a gram on no line is nothing to book [kg]. */
const LEAST_BOOKED = 0.5e-3;

interface LedgerProps {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
  /** with what is typed and tried */
  readonly asTyped: Build;
  readonly shown: Headroom;
  readonly typing: Typing | null;
  readonly onTyping: (typing: Typing | null) => void;
}

/** What weighs what, and the ways to change it. */
function LedgerSection({ book, build, asTyped, shown, typing, onTyping }: LedgerProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const store = (data: Build) => saveBuild(build, data);
  const sentences = [unaccountedSentence(shown), forgottenSentence(shown)].filter(Boolean);
  return (
    <section class="page-main" aria-label="The ledger">
      <h2>What is on board</h2>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <WeighedSince book={book} build={build} />
      {(shown.ledger.unaccounted ?? 0) >= LEAST_BOOKED && (
        <p>
          <button
            type="button"
            onClick={() =>
              void store(withBooked(build.data, shown.ledger, balanceOf(book, build.data))).then(setProblem)
            }
          >
            Book it as a line
          </button>
        </p>
      )}
      <LedgerTable
        ledger={shown.ledger}
        board={() => massBoard(book, asTyped)}
        build={build.data}
        onEdit={(at) => onTyping({ draft: draftOfLine(build.data.ledger[at]), at })}
        onRemove={(at) => void store(withoutLine(build.data, at)).then(setProblem)}
      />
      <p>
        <button
          type="button"
          class="plain"
          onClick={() => downloadText(toCsv(ledgerTable(shown.ledger)), `masses of ${build.data.name}.csv`)}
        >
          save the ledger as CSV
        </button>
      </p>
      {problem && (
        <p class="field-error" role="alert">
          {problem}
        </p>
      )}
      {typing ? (
        <LineForm
          key={typing.at ?? "new"}
          title={typing.at === null ? "A new line" : `Change “${build.data.ledger[typing.at]?.name ?? ""}”`}
          draft={typing.draft}
          others={othersOf(build.data, typing.at)}
          onDraft={(draft) => onTyping({ ...typing, draft })}
          onSave={async (line) => {
            const refused = await store(withLine(build.data, line, typing.at));
            if (refused === null) onTyping(null);
            return refused;
          }}
          onCancel={() => onTyping(null)}
        />
      ) : (
        <p>
          <button type="button" data-next onClick={() => onTyping({ draft: EMPTY_LINE, at: null })}>
            Add a line
          </button>
        </p>
      )}
      <WholeMass build={build.data} ledger={shown.ledger} onSave={store} />
    </section>
  );
}
