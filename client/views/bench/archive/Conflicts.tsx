import { COLLECTION_WORDS } from "../../../../shared/model/collections.ts";
import { Differences } from "../../../ui/Differences.tsx";
import { moment } from "../../../ui/moment.ts";
import { type Conflict, differing } from "./archive.ts";

interface ConflictsProps {
  readonly conflicts: readonly Conflict[];
  /** keys of those in which the archive's record is taken */
  readonly takesTheirs: ReadonlySet<string>;
  readonly onChange: (keys: ReadonlySet<string>) => void;
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
            differences={differing(conflict.mine.data, conflict.theirs.data).map(
              ({ path, mine, theirs }) => ({
                path,
                label: path,
                before: mine,
                after: theirs,
              }),
            )}
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
