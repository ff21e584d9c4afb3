import { useMemo } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import { nameWithStanding, offered } from "../../../shared/model/withdrawn.ts";
import { go, href, route } from "../../app/router.ts";
import { currentBook } from "../../state/book.ts";
import { current } from "../../state/build.ts";
import { counted } from "../../ui/count.ts";
import { EmptyBench } from "../../ui/empty/EmptyBench.tsx";
import { Status } from "../../ui/Status.tsx";
import { askedBuilds, compareAddress, MOST_COMPARED } from "./asked.ts";
import { CompareTable } from "./CompareTable.tsx";
import { letterAt } from "./letterAt.ts";
import type { Compared } from "./useColumn.ts";

/** Which of them? Two to six builds side by side. */
export default function CompareView() {
  const book = currentBook.value;
  if (!book) return null;
  if (book.builds.length === 0) return <EmptyBench book={book} />;
  return <CompareOf book={book} />;
}

const show = (ids: readonly string[]) => go(compareAddress(ids), { replace: true });

function comparedIn(book: Book, ids: readonly string[]): Compared[] {
  return ids.flatMap((id, i) => {
    const build = book.builds.find((each) => each.id === id);
    if (!build) return [];
    return [{ key: id, letter: letterAt(i), name: build.data.name, build: build.data, stored: id }];
  });
}

function CompareOf({ book }: { readonly book: Book }) {
  const { ids, unknown, tooMany } = askedBuilds(route.value.query, book, current.value?.id ?? null);
  const compared = useMemo(() => comparedIn(book, ids), [book, ids.join(",")]);
  const remove = (key: string) => show(ids.filter((id) => id !== key));
  return (
    <div class="compare-view">
      <h1>Compare</h1>
      {unknown.length > 0 && (
        <Status class="near">
          The bench book has no {unknown.length > 1 ? "builds" : "build"}{" "}
          {unknown.map((id) => `“${id}”`).join(", ")}; deleted, perhaps.
        </Status>
      )}
      {tooMany > 0 && (
        <Status class="near">
          At most {MOST_COMPARED} stand side by side; {counted(tooMany, "build")} left out.
        </Status>
      )}
      <AddBuild book={book} ids={ids} />
      {compared.length < 2 ? (
        <p>
          {compared.length === 0
            ? "Choose two builds or more."
            : `Choose another to stand beside ${compared[0].name}.`}{" "}
          {book.builds.length === 1 && (
            <>
              There is one build so far: open it in{" "}
              <a href={href("parts", `builds/${book.builds[0].id}`)}>Parts</a>, duplicate it and change the
              copy.
            </>
          )}
        </p>
      ) : (
        <CompareTable book={book} compared={compared} label="Builds side by side" onRemove={remove} />
      )}
    </div>
  );
}

function AddBuild({ book, ids }: { readonly book: Book; readonly ids: readonly string[] }) {
  const others = offered(book.builds, null).filter(({ id }) => !ids.includes(id));
  if (others.length === 0 || ids.length >= MOST_COMPARED) return null;
  return (
    <p>
      <label>
        Add a build{" "}
        <select
          value=""
          onChange={(event) => {
            const { value } = event.currentTarget;
            event.currentTarget.value = "";
            if (value !== "") show([...ids, value]);
          }}
        >
          <option value="">choose…</option>
          {others.map(({ id, data }) => (
            <option key={id} value={id}>
              {nameWithStanding(data)}
            </option>
          ))}
        </select>
      </label>
    </p>
  );
}
