import { useState } from "preact/hooks";
import { balanceOf } from "../../../shared/book/mass/balance.ts";
import { massBoard } from "../../../shared/book/mass/workings.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import type { Build } from "../../../shared/model/build.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { saveBuild } from "../../state/saveBuild.ts";
import { downloadText } from "../../ui/download.ts";
import { toCsv } from "../../ui/table.ts";
import type { Headroom } from "./headroom.ts";
import { LedgerTable } from "./LedgerTable.tsx";
import { LineForm } from "./LineForm.tsx";
import { ledgerTable } from "./ledgerCsv.ts";
import { draftOfLine, EMPTY_LINE, withBooked, withLine, withoutLine } from "./line.ts";
import { forgottenSentence, unaccountedSentence } from "./massWords.ts";
import { othersOf, type Typing } from "./typing.ts";
import { WeighedSince } from "./WeighedSince.tsx";
import { WholeMass } from "./WholeMass.tsx";

/** Less than half a gram on no line is nothing to book [kg]. */
const LEAST_BOOKED = 0.5e-3;

interface TypingProps {
  readonly typing: Typing | null;
  readonly onTyping: (typing: Typing | null) => void;
}

export interface LedgerProps extends TypingProps {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
  /** with what is typed and tried */
  readonly asTyped: Build;
  readonly shown: Headroom;
}

/** What weighs what, and the ways to change it. */
export function LedgerSection({ book, build, asTyped, shown, typing, onTyping }: LedgerProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const store = (data: Build) => saveBuild(build, data);
  const change = (data: Build) => void store(data).then(setProblem);
  const { ledger } = shown;
  const sentences = [unaccountedSentence(shown), forgottenSentence(shown)].filter(Boolean);
  return (
    <section class="page-main" aria-label="The ledger">
      <h2>What is on board</h2>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <WeighedSince book={book} build={build} />
      {(ledger.unaccounted ?? 0) >= LEAST_BOOKED && (
        <p>
          <button
            type="button"
            onClick={() => change(withBooked(build.data, ledger, balanceOf(book, build.data)))}
          >
            Book it as a line
          </button>
        </p>
      )}
      <LedgerTable
        ledger={ledger}
        board={() => massBoard(book, asTyped)}
        build={build.data}
        onEdit={(at) => onTyping({ draft: draftOfLine(build.data.ledger[at]), at })}
        onRemove={(at) => change(withoutLine(build.data, at))}
      />
      <p>
        <button
          type="button"
          class="plain"
          onClick={() => downloadText(toCsv(ledgerTable(ledger)), `masses of ${build.data.name}.csv`)}
        >
          save the ledger as CSV
        </button>
      </p>
      {problem && (
        <p class="field-error" role="alert">
          {problem}
        </p>
      )}
      <TypedLine build={build.data} typing={typing} onTyping={onTyping} onStore={store} />
      <WholeMass build={build.data} ledger={ledger} onSave={store} />
    </section>
  );
}

interface TypedLineProps extends TypingProps {
  readonly build: Build;
  /** @returns why it was refused; null where it was stored */
  readonly onStore: (build: Build) => Promise<string | null>;
}

/** The form of the line that is typed, or the button that begins one. */
function TypedLine({ build, typing, onTyping, onStore }: TypedLineProps) {
  if (!typing)
    return (
      <p>
        <button type="button" data-next onClick={() => onTyping({ draft: EMPTY_LINE, at: null })}>
          Add a line
        </button>
      </p>
    );
  const { draft, at } = typing;
  return (
    <LineForm
      key={at ?? "new"}
      title={at === null ? "A new line" : `Change “${build.ledger[at]?.name ?? ""}”`}
      draft={draft}
      others={othersOf(build, at)}
      onDraft={(next) => onTyping({ ...typing, draft: next })}
      onSave={async (line) => {
        const refused = await onStore(withLine(build, line, at));
        if (refused === null) onTyping(null);
        return refused;
      }}
      onCancel={() => onTyping(null)}
    />
  );
}
