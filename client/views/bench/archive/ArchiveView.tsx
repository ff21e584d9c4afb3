import { useState } from "preact/hooks";
import type { BookState } from "../../../../shared/model/api/book.ts";
import { COLLECTION_WORDS } from "../../../../shared/model/collections.ts";
import { href } from "../../../app/router.ts";
import { ApiError, api } from "../../../state/api.ts";
import { connected } from "../../../state/events.ts";
import { replaceBook } from "../../../state/replaceBook.ts";
import { Answer } from "../../../ui/Answer.tsx";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { counted } from "../../../ui/count.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { Status } from "../../../ui/Status.tsx";
import { type Archive, type Comparison, compare, countsOf, merge, readArchive } from "./archive.ts";
import { Backups } from "./Backups.tsx";
import { Conflicts } from "./Conflicts.tsx";

/** A whole book takes longer than a record [ms]. */
const PATIENCE = 120_000;

type Way = "instead" | "merge";

/** Takes a file and lays it beside the book. */
function useArchive() {
  const [given, setGiven] = useState<Archive | null>(null);
  const [found, setFound] = useState<Comparison | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const [done, setDone] = useState<string | null>(null);
  const attempt = async (act: () => Promise<void>) => {
    setBusy(true);
    setProblem(null);
    try {
      await act();
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.fields[0] ? `${error.message} ${error.fields[0].message}` : error.message);
    } finally {
      setBusy(false);
    }
  };
  const read = (file: File) =>
    attempt(async () => {
      setDone(null);
      const archive = readArchive(await file.text());
      if ("message" in archive) {
        setGiven(null);
        return setProblem(archive.message);
      }
      setFound(compare(await api.get<Archive>("/archive", { patience: PATIENCE }), archive));
      setGiven(archive);
    });
  const send = (way: Way, takesTheirs: ReadonlySet<string>) =>
    attempt(async () => {
      if (!given) return;
      const mine = way === "merge" ? await api.get<Archive>("/archive", { patience: PATIENCE }) : null;
      const body = mine ? merge(mine, given, takesTheirs) : given;
      const { backup } = await replaceBook(() =>
        api.post<BookState>("/archive?replace=true", body, { patience: PATIENCE }),
      );
      setGiven(null);
      setDone(
        `${way === "merge" ? "The archive is merged into the book." : "The archive is the book now."}${backup ? ` What was there before lies beside the data file as ${backup}.` : ""}`,
      );
    });
  return { given, found, problem, busy, done, read, send };
}

/** The whole book out and in: saved as one file, taken in instead of the book or merged with it. */
export default function ArchiveView() {
  const { given, found, problem, busy, done, read, send } = useArchive();
  return (
    <div class="bench-archive">
      <Answer sentence="The whole book, out and in.">
        One file holds every part, test and build, and what each said before.{" "}
        <a href={href("bench")}>Back to the list</a>
      </Answer>
      {!connected.value && (
        <Status class="near">
          There is no connection to the server, which keeps the book: it is saved, taken in and restored once
          the server is back. None of this waits on this device.
        </Status>
      )}
      <h2>Save</h2>
      <p class="bench-buttons">
        <a class="button" href="/api/v1/archive" download>
          Save the archive
        </a>
        <a class="button" href="/api/v1/backup" download>
          Save a copy of the data file
        </a>
      </p>
      <p class="quiet small">
        The archive is text, and can be read by later versions and on another machine. The copy of the data
        file takes the data file's place while the server is stopped.
      </p>
      <h2>Take in</h2>
      <label>
        <span class="field-label">Archive, gripcurve-….json</span>
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            if (file) void read(file);
          }}
        />
      </label>
      {busy && <Status>Working…</Status>}
      {problem && <Problem message={problem} />}
      {done && <Status class="bench-saved">{done}</Status>}
      {given && found && <TakeIn given={given} found={found} busy={busy} onSend={send} />}
      <Backups />
    </div>
  );
}

interface TakeInProps {
  readonly given: Archive;
  readonly found: Comparison;
  readonly busy: boolean;
  readonly onSend: (way: Way, takesTheirs: ReadonlySet<string>) => Promise<void>;
}

/** What is in the file, and which way it is taken in. */
function TakeIn({ given, found, busy, onSend }: TakeInProps) {
  const [takesTheirs, setTakesTheirs] = useState<ReadonlySet<string>>(new Set());
  const [sure, setSure] = useState(false);
  const words = countsOf(given).map(([name, count]) => counted(count, COLLECTION_WORDS[name]));
  const { added, same, own, conflicts } = found;
  const isEmpty = own === 0 && same === 0 && conflicts.length === 0;
  return (
    <section>
      <p>
        Saved {given.exportedAt.slice(0, 10)}
        {given.demo ? ", the invented demo" : ""}: {words.join(", ") || "nothing"}.
      </p>
      {isEmpty ? (
        <BusyButton
          type="button"
          class="primary"
          busy={busy}
          onClick={() => void onSend("instead", new Set())}
        >
          Take it in
        </BusyButton>
      ) : (
        <>
          <p>
            Beside this book: {added} new, {same} the same, {conflicts.length} different, {own} in this book
            alone.
          </p>
          {conflicts.length > 0 && (
            <Conflicts conflicts={conflicts} takesTheirs={takesTheirs} onChange={setTakesTheirs} />
          )}
          <p class="bench-buttons">
            <BusyButton
              type="button"
              class="primary"
              busy={busy}
              onClick={() => void onSend("merge", takesTheirs)}
            >
              Merge it into this book
            </BusyButton>
            {sure ? (
              <BusyButton type="button" busy={busy} onClick={() => void onSend("instead", new Set())}>
                Yes, instead of this book
              </BusyButton>
            ) : (
              <button type="button" data-next onClick={() => setSure(true)}>
                Take it in instead of this book…
              </button>
            )}
          </p>
          <p class="quiet small">Either way a copy of this book as it is now is kept beside the data file.</p>
        </>
      )}
    </section>
  );
}
