import type { Book } from "../../../../shared/book/book.ts";
import { COLLECTION_WORDS } from "../../../../shared/model/collections.ts";
import type { BenchTest } from "../../../../shared/model/tests/index.ts";
import { currentBook } from "../../../state/book.ts";
import { type Difference, Differences } from "../../../ui/Differences.tsx";
import { moment } from "../../../ui/moment.ts";
import { changesOf } from "../../parts/changes.ts";
import { FORMS } from "../../parts/forms.ts";
import { differences } from "../record/differences.ts";
import { KINDS } from "../record/kinds.ts";
import { shownText } from "../record/names.ts";
import { writeDraft } from "../record/writeDraft.ts";
import { type Conflict, differing } from "./archive.ts";

interface ConflictsProps {
  readonly conflicts: readonly Conflict[];
  /** keys of those in which the archive's record is taken */
  readonly takesTheirs: ReadonlySet<string>;
  readonly onChange: (keys: ReadonlySet<string>) => void;
}

const isTest = (data: unknown): data is BenchTest => {
  const { kind, rows, instruments } = data as Readonly<Record<string, unknown>>;
  return String(kind) in KINDS && Array.isArray(rows) && typeof instruments === "object";
};

/** What differs, named as the forms name it; what has no form of its own by its path. */
function differencesOf({ collection, mine, theirs }: Conflict, book: Book | null): Difference[] {
  const form = FORMS.find((each) => each.collection === collection);
  if (form) return changesOf(form, mine.data, theirs.data, book);
  if (isTest(mine.data) && isTest(theirs.data) && mine.data.kind === theirs.data.kind) {
    const show = shownText(KINDS[mine.data.kind], book);
    const parts = book ?? undefined;
    return differences(writeDraft(mine.data, parts), writeDraft(theirs.data, parts), show);
  }
  return differing(mine.data, theirs.data).map(({ path, ...said }) => ({
    path,
    label: path,
    before: said.mine,
    after: said.theirs,
  }));
}

const nameOf = ({ collection, mine }: Conflict): string => {
  const { name, title, kind, date } = mine.data as Readonly<Record<string, unknown>>;
  return `${COLLECTION_WORDS[collection]} ${String(name || title || `${kind} of ${date}`)}`;
};

/** Records that are in both books and say different things, side by side; one of each is chosen. */
export function Conflicts({ conflicts, takesTheirs, onChange }: ConflictsProps) {
  const choose = (key: string, theirs: boolean) => {
    const next = new Set(takesTheirs);
    if (theirs) next.add(key);
    else next.delete(key);
    onChange(next);
  };
  return (
    <>
      <p class="quiet small">
        Where both differ, this book's own is kept unless you choose the archive's; what gives way stays in
        the history.
      </p>
      {conflicts.map((conflict) => (
        <fieldset key={conflict.key} class="bench-conflict">
          <legend>{nameOf(conflict)}</legend>
          <Differences
            differences={differencesOf(conflict, currentBook.value)}
            before={`This book, ${moment(conflict.mine.updatedAt)}`}
            after={`Archive, ${moment(conflict.theirs.updatedAt)}`}
          />
          {[false, true].map((theirs) => (
            <label key={String(theirs)}>
              <input
                type="radio"
                name={conflict.key}
                checked={takesTheirs.has(conflict.key) === theirs}
                onChange={() => choose(conflict.key, theirs)}
              />{" "}
              {theirs ? "take the archive's" : "keep this book's"}
            </label>
          ))}
        </fieldset>
      ))}
    </>
  );
}
