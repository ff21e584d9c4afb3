import type { ComponentChildren } from "preact";
import type { Book } from "../../shared/book/resolve.ts";
import type { StoredOf } from "../../shared/model/record.ts";
import { href, route } from "../app/router.ts";
import { currentBook } from "../state/book.ts";
import { current, unknownBuild } from "../state/build.ts";
import { Empty } from "./Empty.tsx";
import { EmptyBench } from "./empty/EmptyBench.tsx";

export interface BuildOnScreenProps {
  readonly children: (book: Book, build: StoredOf<"builds">) => ComponentChildren;
}

/** The frame of a view of one build, and what stands in its place where there is none. */
export function BuildOnScreen({ children }: BuildOnScreenProps) {
  const book = currentBook.value;
  const build = current.value;
  if (!book) return null;
  if (unknownBuild.value)
    return (
      <Empty
        title="The bench book has no such build."
        action={{ label: "Show another build", href: href(route.value.view) }}
      >
        <p>The address names “{route.value.id}”. It may have been deleted.</p>
      </Empty>
    );
  if (!build) return <EmptyBench book={book} />;
  return <>{children(book, build)}</>;
}
