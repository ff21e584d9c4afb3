import { go, href, navigate, route } from "../../../app/router.ts";
import { WaitingList } from "../../../app/waiting/WaitingList.tsx";
import { currentBook, testCount, testsWritten } from "../../../state/book.ts";
import { Answer } from "../../../ui/Answer.tsx";
import { counted } from "../../../ui/count.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { Status } from "../../../ui/Status.tsx";
import { KIND_ORDER, KINDS } from "../record/kinds.ts";
import { Deleted } from "./Deleted.tsx";
import { type Filters, filtersOf, isFiltered, queryOf } from "./filters.ts";
import { usePages } from "./pages.ts";
import { nameOf, partChoices } from "./partNames.ts";
import { resultLine } from "./resultLine.ts";
import { SaveList } from "./SaveList.tsx";
import { TestRow } from "./TestRow.tsx";

/** Buttons for a new test of each kind. */
function NewButtons() {
  return (
    <p class="bench-buttons bench-new">
      {KIND_ORDER.map((kind) => (
        <a key={kind} class="button" href={href("bench", `new/${kind}`)}>
          {KINDS[kind].name}
        </a>
      ))}
      <a class="button" href={href("bench", "import")}>
        Import from CSV
      </a>
    </p>
  );
}

/** What is done with the book as a whole. */
function BookLinks() {
  return (
    <p class="bench-book">
      <a href={href("bench", "archive")}>Archive and backup</a>
      <a href={href("bench", "units")}>Units</a>
      <a href={href("bench", "devices")}>Devices</a>
      <a href={href("parts")}>Parts and builds</a>
    </p>
  );
}

function answerOf(count: number): string {
  if (count === 0) return "No test is logged yet.";
  return `${counted(count, "test")} ${count === 1 ? "is" : "are"} in the book.`;
}

/** Every test of the book, newest first. */
export function TestList() {
  const { query } = route.value;
  const filters = filtersOf(query);
  const saved = query.get("saved");
  const count = testCount.value ?? 0;
  const { items, hasMore, failure, withoutServer, more } = usePages(filters, testsWritten.value);
  const isEmpty = count === 0;
  const savedTest = currentBook.value?.tests.find((test) => test.id === saved);
  return (
    <div class="bench-list">
      <Answer sentence={answerOf(count)}>
        {isEmpty && "A test of any kind starts the book; everything else is computed from what was read."}
      </Answer>
      {savedTest && (
        <Status class="bench-saved">
          Saved: {nameOf(savedTest.data)}, {resultLine(savedTest.data)}.{" "}
          <a href={href("bench", `new/${savedTest.data.kind}`)}>
            Log another {KINDS[savedTest.data.kind].name.toLowerCase()}
          </a>
        </Status>
      )}
      <WaitingList />
      <h2>{isEmpty ? "Log the first" : "Log a new test"}</h2>
      <NewButtons />
      <BookLinks />
      {!isEmpty && <FilterBar filters={filters} />}
      {withoutServer && (
        <p class="quiet">
          Without the server, the list holds what this device knows; tests struck out are missing.
        </p>
      )}
      {failure && <Problem message={`The list could not be read. ${failure}`} />}
      {items?.length === 0 && !isEmpty && (
        <p>
          No test matches.{" "}
          <button type="button" class="plain" onClick={() => navigate("bench")}>
            Show all
          </button>
        </p>
      )}
      <ol class="bench-tests">
        {items?.map((test) => (
          <TestRow key={test.id} test={test} isNew={test.id === saved} />
        ))}
      </ol>
      {hasMore && (
        <button type="button" onClick={more}>
          More
        </button>
      )}
      <Deleted />
    </div>
  );
}

function FilterBar({ filters }: { readonly filters: Filters }) {
  const choose = (change: Partial<Filters>) =>
    go(href("bench", null, queryOf({ ...filters, ...change })), { replace: true });
  return (
    <search class="bench-filters">
      <label>
        <span class="field-label">Kind</span>
        <select value={filters.kind} onChange={(event) => choose({ kind: event.currentTarget.value })}>
          <option value="">all kinds</option>
          {KIND_ORDER.map((kind) => (
            <option key={kind} value={kind}>
              {KINDS[kind].name}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span class="field-label">Part</span>
        <select value={filters.part} onChange={(event) => choose({ part: event.currentTarget.value })}>
          <option value="">all parts</option>
          {partChoices(currentBook.value).map(({ key, title, parts }) => (
            <optgroup key={key} label={title}>
              {parts.map((part) => (
                <option key={part.id} value={`${key}:${part.id}`}>
                  {part.name}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </label>
      <label>
        <span class="field-label">Title contains</span>
        <input
          type="search"
          value={filters.text}
          onInput={(event) => choose({ text: event.currentTarget.value })}
        />
      </label>
      <SaveList filters={filters} />
      {isFiltered(filters) && (
        <button type="button" class="plain" onClick={() => navigate("bench")}>
          show all
        </button>
      )}
    </search>
  );
}
