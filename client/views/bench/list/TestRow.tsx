import { useState } from "preact/hooks";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { href } from "../../../app/router.ts";
import { ApiError } from "../../../state/api.ts";
import { currentBook } from "../../../state/book.ts";
import { deleteRecord } from "../../../state/saveRecord.ts";
import { deletionWaits, waitingFor } from "../../../state/waiting/list.ts";
import { withdraw } from "../../../state/withdraw.ts";
import { downloadText } from "../../../ui/download.ts";
import { dayText } from "../../../ui/moment.ts";
import { KINDS } from "../record/kinds.ts";
import { csvName, exportCsv } from "./exportCsv.ts";
import { nameOf, partNames } from "./partNames.ts";
import { resultLine } from "./resultLine.ts";
import { StrikeOut } from "./StrikeOut.tsx";
import { TakeMass } from "./TakeMass.tsx";

type Stored = StoredOf<"tests">;

function saveCsv(test: Stored["data"], setUp: boolean): void {
  downloadText(exportCsv(test, { setUp, parts: currentBook.value ?? undefined }), csvName(test));
}

/** One test of the list: what it found, and what can be done with it. */
export function TestRow({ test, isNew }: { readonly test: Stored; readonly isNew: boolean }) {
  const [asking, setAsking] = useState<"delete" | "strike" | null>(null);
  const { data } = test;
  const parts = partNames(data, currentBook.value);
  const isGoing = deletionWaits("tests", test.id);
  return (
    <li class={isNew ? "bench-test bench-test-new" : "bench-test"}>
      <time dateTime={data.date}>{dayText(data.date)}</time>
      <div class="bench-test-words">
        <p class="bench-test-title">
          <a href={href("bench", test.id)}>{nameOf(data)}</a>
          {data.title !== "" && <span class="quiet"> {KINDS[data.kind].name.toLowerCase()}</span>}
        </p>
        <p class="bench-test-result">{resultLine(data)}</p>
        {data.struckOut !== undefined && <p class="bench-struck">Struck out: {data.struckOut}</p>}
        <Waits id={test.id} />
        <TakeMass test={test} />
        <p class="quiet small bench-test-note">{[parts, data.note].filter(Boolean).join(" – ")}</p>
      </div>
      {asking === "delete" && !isGoing && <Confirm test={test} onKeep={() => setAsking(null)} />}
      {asking === "strike" && data.struckOut === undefined && (
        <StrikeOut test={test} onDone={() => setAsking(null)} />
      )}
      {!isGoing && (asking === null || (asking === "strike" && data.struckOut !== undefined)) && (
        <Actions test={test} onAsk={setAsking} />
      )}
    </li>
  );
}

/** What was done to the test on this device and is not in the book yet. */
function Waits({ id }: { readonly id: string }) {
  if (deletionWaits("tests", id))
    return <p class="bench-struck">Deleted on this device; that waits for the server.</p>;
  if (!waitingFor("tests", id)) return null;
  return <p class="bench-struck">A correction made on this device waits for the server.</p>;
}

interface ActionsProps {
  readonly test: Stored;
  readonly onAsk: (what: "delete" | "strike" | null) => void;
}

/** What can be done with a test. */
function Actions({ test, onAsk }: ActionsProps) {
  const [problem, setProblem] = useState<string | null>(null);
  const { data } = test;
  const of = `${nameOf(data)} of ${dayText(data.date)}`;
  const countAgain = async () => {
    onAsk(null);
    setProblem((await withdraw("tests", test, null)).problem);
  };
  return (
    <div class="bench-test-actions">
      <button
        type="button"
        class="plain"
        onClick={() => saveCsv(data, false)}
        aria-label={`Save ${of} as CSV`}
      >
        CSV
      </button>
      <button
        type="button"
        class="plain"
        title="what stands above the rows goes into lines that begin with #: the whole test comes back by importing it"
        onClick={() => saveCsv(data, true)}
        aria-label={`Save ${of} as CSV with set-up`}
      >
        CSV with set-up
      </button>
      {data.struckOut === undefined ? (
        <button type="button" class="plain" onClick={() => onAsk("strike")} aria-label={`Strike out ${of}`}>
          strike out
        </button>
      ) : (
        <button
          type="button"
          class="plain"
          onClick={() => void countAgain()}
          aria-label={`Count again ${of}`}
        >
          count again
        </button>
      )}
      <button
        type="button"
        class="plain"
        data-next
        onClick={() => onAsk("delete")}
        aria-label={`Delete ${of}`}
      >
        delete
      </button>
      {problem && (
        <span class="field-error" role="alert">
          {problem}
        </span>
      )}
    </div>
  );
}

function Confirm({ test, onKeep }: { readonly test: Stored; readonly onKeep: () => void }) {
  const [failure, setFailure] = useState<string | null>(null);
  const remove = async () => {
    try {
      await deleteRecord("tests", test);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setFailure(error.message);
    }
  };
  return (
    <div class="bench-confirm" role="alertdialog" aria-label="Delete this test?">
      <p>Delete this test? Every figure based on it is computed anew without it.</p>
      <p class="bench-buttons">
        <button type="button" onClick={() => void remove()}>
          Delete it
        </button>
        <button type="button" data-next onClick={onKeep}>
          Keep it
        </button>
      </p>
      {failure && (
        <p class="field-error" role="alert">
          {failure}
        </p>
      )}
    </div>
  );
}
