import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { href } from "../../../app/router.ts";
import { counted } from "../../../ui/count.ts";
import { Mark } from "../../../ui/Mark.tsx";
import type { FormSpec } from "../spec.ts";
import { FigureLine } from "./FigureLine.tsx";
import { figuresOf } from "./figures.ts";
import { SketchOf } from "./SketchOf.tsx";
import { countedUses } from "./uses.ts";

export interface PartRowProps {
  readonly book: Book;
  readonly form: FormSpec;
  readonly record: { readonly id: string; readonly data: { readonly name: string } };
  readonly saved: boolean;
}

/** A part in the list: its name, its curve, a few figures, the tests it has and the builds that use it. */
export function PartRow({ book, form, record, saved }: PartRowProps) {
  const { collection } = form;
  const { figures, mark, sketch } = useMemo(
    () => figuresOf(book, collection, record.id),
    [book, collection, record.id],
  );
  const uses = useMemo(() => countedUses(book, collection, record.id), [book, collection, record.id]);
  const counts = uses && [
    ...(uses.tests > 0 ? [counted(uses.tests, "test")] : []),
    ...(uses.builds > 0 ? [`in ${counted(uses.builds, "build")}`] : []),
  ];
  return (
    <li>
      <div class="part-row">
        <span>
          <a href={href("parts", `${collection}/${record.id}`)}>{record.data.name}</a>
          {saved && <span class="good"> saved</span>}
          {mark && (
            <>
              {" "}
              <Mark word={mark} />
            </>
          )}
        </span>
        {figures.length > 0 && (
          <span class="small">
            <FigureLine book={book} collection={collection} id={record.id} figures={figures} />
          </span>
        )}
        {counts && counts.length > 0 && <span class="small quiet">{counts.join(", ")}</span>}
        {collection === "builds" && (
          <a class="small" href={href("match", record.id)} aria-label={`Match of ${record.data.name}`}>
            match
          </a>
        )}
      </div>
      {sketch && <SketchOf {...sketch} />}
    </li>
  );
}
