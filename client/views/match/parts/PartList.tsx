import { useId, useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { changes, settle } from "../../../state/build.ts";
import { type PartTried, partTried, withParts } from "../../../state/partsTried.ts";
import { onceTested, testsBehind } from "../../../state/tests/useTests.ts";
import { partValue } from "../../../ui/partChoices.ts";
import { PART_LABELS, partList, partName } from "./partLists.ts";

interface PartListProps {
  readonly book: Book;
  /** as stored */
  readonly stored: Build;
  /** with the parts that are tried */
  readonly build: Build;
  readonly part: PartTried;
}

/** One part of the build, to be swapped for another of the book; its mass comes with it. */
export function PartList({ book, stored, build, part }: PartListProps) {
  const id = useId();
  const list = useMemo(() => partList(book, build, part), [book, build, part]);
  const value = partValue(build, part);
  const chosen = list.find((each) => each.value === value);
  const own = partValue(stored, part);
  const put = (exchange: Parameters<typeof partTried>[3]) => {
    const tried = () => partTried(stored, changes.peek(), part, exchange);
    onceTested(
      (all) => testsBehind([withParts(all, stored, tried())])(all),
      () => settle(tried()),
    );
  };
  if (list.length === 0) return null;
  return (
    <div class="handle part-list" data-part={part}>
      <label class="handle-label" for={id}>
        {PART_LABELS[part]}
      </label>
      <select
        id={id}
        value={value}
        onChange={(event) => {
          const found = list.find((each) => each.value === event.currentTarget.value);
          if (found) put(found.exchange);
        }}
      >
        {list.map((each) => (
          <option key={each.value} value={each.value}>
            {each.label}
          </option>
        ))}
      </select>
      {value !== own && (
        <span class="handle-basis">
          was {partName(book, stored, part)}{" "}
          <button
            type="button"
            class="plain"
            onClick={() =>
              put(
                part === "rotor"
                  ? { rotor: stored.rotor, diameter: stored.diameter }
                  : { [part]: stored[part] },
              )
            }
          >
            back<span class="visually-hidden"> to it, {PART_LABELS[part]}</span>
          </button>
        </span>
      )}
      {value !== own && chosen && !chosen.weighed && (
        <span class="handle-basis near">
          Its record has no mass: the whole is counted without it. Weigh it and write it there.
        </span>
      )}
    </div>
  );
}
