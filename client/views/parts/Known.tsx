import { useMemo } from "preact/hooks";
import type { Book } from "../../../shared/book/book.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { KIND_WORDS } from "../../ui/kindWords.ts";
import { Mark } from "../../ui/Mark.tsx";
import { dayText } from "../../ui/moment.ts";
import { FigureLine } from "./list/FigureLine.tsx";
import { figuresOf } from "./list/figures.ts";
import { SketchOf } from "./list/SketchOf.tsx";
import { partKeyOf, usesOf } from "./list/uses.ts";
import type { FormSpec } from "./spec.ts";

/** More tests than these are found on the Bench. */
const SHOWN = 8;

interface KnownProps {
  readonly book: Book;
  readonly form: FormSpec;
  readonly id: string;
}

/** Beside a part's form: its curve and figures as the tests have them, those tests, and the builds that use it. */
export function Known({ book, form: { collection, one }, id }: KnownProps) {
  const { figures, mark, sketch } = useMemo(() => figuresOf(book, collection, id), [book, collection, id]);
  const uses = useMemo(() => usesOf(book, collection, id), [book, collection, id]);
  if (!uses) return null;
  return (
    <aside class="part-known" aria-label={`What is known of this ${one}`}>
      <h2>What is known of it</h2>
      {sketch && (
        <figure>
          <SketchOf {...sketch} />
          <figcaption class="small quiet">{sketch.of}</figcaption>
        </figure>
      )}
      {figures.length > 0 && (
        <p>
          <FigureLine book={book} collection={collection} id={id} figures={figures} />{" "}
          {mark && <Mark word={mark} />}
        </p>
      )}
      <p>
        <a href={href("curves", `${collection}/${id}`)}>Its page in Curves</a>
      </p>
      <Tests
        tests={uses.tests}
        all={href("bench", null, { part: `${partKeyOf(collection)}:${id}` })}
        one={one}
      />
      <h3>In builds</h3>
      {uses.builds.length === 0 ? (
        <p class="quiet">None yet.</p>
      ) : (
        <ul>
          {uses.builds.map((build) => (
            <li key={build.id}>
              <a href={href("match", build.id)}>{build.data.name}</a>
            </li>
          ))}
        </ul>
      )}
    </aside>
  );
}

interface TestsProps {
  readonly tests: readonly StoredOf<"tests">[];
  /** where all of them are listed */
  readonly all: string;
  readonly one: string;
}

function Tests({ tests, all, one }: TestsProps) {
  return (
    <>
      <h3>Tests</h3>
      {tests.length === 0 && <p class="quiet">None yet: its figures are those of this form.</p>}
      <ul>
        {tests.slice(0, SHOWN).map(({ id, data }) => (
          <li key={id}>
            <a href={href("bench", id)}>{data.title || KIND_WORDS[data.kind]}</a>{" "}
            <span class="quiet small">{dayText(data.date)}</span>
          </li>
        ))}
      </ul>
      {tests.length > SHOWN && (
        <p>
          <a href={all}>{`All ${tests.length} tests of this ${one}`}</a>
        </p>
      )}
    </>
  );
}
