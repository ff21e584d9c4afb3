import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { Backup, BackupContents, BookState } from "../../../../shared/model/api/book.ts";
import { COLLECTION_NAMES, COLLECTION_WORDS } from "../../../../shared/model/collections.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { ApiError, api } from "../../../state/api.ts";
import { currentBook } from "../../../state/book.ts";
import { replaceBook } from "../../../state/replaceBook.ts";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { counted } from "../../../ui/count.ts";
import { moment } from "../../../ui/moment.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { Status } from "../../../ui/Status.tsx";

/** A whole book takes longer than a record [ms]. */
const PATIENCE = 120_000;

/** What a copy was kept before, by the end of its name. */
const REASONS: Readonly<Record<string, string>> = {
  "before-empty": "kept before the bench was emptied",
  "before-import": "kept before an archive was taken in",
  daily: "made that day",
  "by-hand": "made by npm run backup",
  "before-restore": "kept before another copy was restored",
};

const reasonOf = ({ reason }: Backup): string =>
  REASONS[reason] ?? (/^before-\d+$/.test(reason) ? "kept before a later version's first start" : "");

const sizeOf = ({ bytes }: Backup): string => `${formatFixed(bytes / 1e6, 1)}\u202fMB`;

const pathOf = (name: string): string => `/backups/${encodeURIComponent(name)}`;

/** @returns what a copy holds, in words */
export function contentsInWords({ demo, counts }: BackupContents): string {
  const words = COLLECTION_NAMES.filter((name) => counts[name] > 0).map((name) =>
    counted(counts[name], COLLECTION_WORDS[name]),
  );
  return `${words.join(", ") || "nothing"}${demo ? " (the invented demo)" : ""}`;
}

/** The copies, the one that is looked into, and what is done with them; the list follows the book. */
function useBackups() {
  const [copies, setCopies] = useState<readonly Backup[] | null>(null);
  const [looked, setLooked] = useState<BackupContents | null>(null);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState<string | null>(null);
  const attempt = async (act: () => Promise<void>) => {
    setBusy(true);
    setProblem(null);
    try {
      await act();
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
    } finally {
      setBusy(false);
    }
  };
  const list = () =>
    attempt(async () => setCopies((await api.get<{ items: readonly Backup[] }>("/backups")).items));
  const look = ({ name }: Backup) =>
    attempt(async () => {
      setDone(null);
      setLooked(null);
      setLooked(await api.get<BackupContents>(pathOf(name), { patience: PATIENCE }));
    });
  const restore = (name: string) =>
    attempt(async () => {
      const { backup } = await replaceBook(() =>
        api.post<BookState>(`${pathOf(name)}/restore`, {}, { patience: PATIENCE }),
      );
      setLooked(null);
      setDone(
        `The copy is the book now.${backup ? ` What was there before lies beside the data file as ${backup}.` : ""}`,
      );
    });
  const book = currentBook.value;
  useEffect(() => void list(), [book]);
  return { copies, looked, busy, problem, done, look, restore, leave: () => setLooked(null) };
}

/** Copies beside the data file: each can be looked into and put in the book's place. */
export function Backups() {
  const { copies, looked, busy, problem, done, look, restore, leave } = useBackups();
  return (
    <section>
      <h2>Go back to a copy</h2>
      <p class="quiet small">
        Emptying the bench, taking in an archive and a new version keep a copy beside the data file.
      </p>
      {problem && <Problem message={problem} />}
      {done && <Status class="bench-saved">{done}</Status>}
      {copies?.length === 0 && <p class="quiet">There is no copy yet.</p>}
      <ul class="bench-tests bench-copies">
        {copies?.map((copy) => (
          <Copy key={copy.name} copy={copy} busy={busy} isOpen={looked?.name === copy.name} onLook={look}>
            {looked && <Looked contents={looked} busy={busy} onRestore={restore} onKeep={leave} />}
          </Copy>
        ))}
      </ul>
    </section>
  );
}

interface CopyProps {
  readonly copy: Backup;
  readonly busy: boolean;
  /** it is looked into */
  readonly isOpen: boolean;
  readonly onLook: (copy: Backup) => Promise<void>;
  /** what it holds, shown where it is open */
  readonly children: ComponentChildren;
}

function Copy({ copy, busy, isOpen, onLook, children }: CopyProps) {
  return (
    <li class="bench-test">
      <time dateTime={copy.at}>{moment(copy.at)}</time>
      <div>
        <p>
          {reasonOf(copy)} <span class="quiet">{sizeOf(copy)}</span>
        </p>
        <p class="quiet small">{copy.name}</p>
        {isOpen && children}
      </div>
      {!isOpen && (
        <BusyButton
          type="button"
          class="plain"
          busy={busy}
          aria-label={`Look into the copy of ${moment(copy.at)}`}
          onClick={() => void onLook(copy)}
        >
          look into it
        </BusyButton>
      )}
    </li>
  );
}

interface LookedProps {
  readonly contents: BackupContents;
  readonly busy: boolean;
  readonly onRestore: (name: string) => Promise<void>;
  readonly onKeep: () => void;
}

/** What a copy holds, and the word that puts it in the book's place. */
function Looked({ contents, busy, onRestore, onKeep }: LookedProps) {
  return (
    <div class="bench-confirm">
      <p>It was read and checked. It holds {contentsInWords(contents)}.</p>
      <p class="quiet small">
        Restored, it takes the book&apos;s place; a copy of the book as it is now is kept.
      </p>
      <p class="bench-buttons">
        <BusyButton type="button" data-next busy={busy} onClick={() => void onRestore(contents.name)}>
          Restore it
        </BusyButton>
        <button type="button" onClick={onKeep}>
          Keep the book as it is
        </button>
      </p>
    </div>
  );
}
