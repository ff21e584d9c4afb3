import type { ComponentChildren } from "preact";
import type { Book } from "../../../../shared/book/book.ts";
import { href } from "../../../app/router.ts";
import type { Draft } from "./draft.ts";
import type { PartList } from "./fields.ts";
import { type Unusable, unusable } from "./usable.ts";

export interface PartChecksProps {
  readonly book: Book;
  readonly list: PartList;
  readonly title: string;
  readonly draft: Draft;
  readonly problemAt: (key: string) => string | undefined;
  readonly onToggle: (id: string) => void;
  /** what stands beside a part's name: its mass */
  readonly note: (id: string) => ComponentChildren;
  /** what stands under a part that is ticked: its range */
  readonly under?: (id: string, name: string) => ComponentChildren;
  /** what may be ticked beside the book's parts, below them */
  readonly beside?: ComponentChildren;
}

const ONE = { motors: "a motor", rotors: "a rotor", packs: "a pack", skirts: "a skirt" } as const;

/** Which parts of one kind are tried; those that can't be solved with say what they lack. */
export function PartChecks(props: PartChecksProps) {
  const { book, list, title, draft, problemAt, onToggle, note, under, beside } = props;
  const parts = book[list];
  const problem = problemAt(list);
  return (
    <fieldset class="choose-list">
      <legend>{title}</legend>
      {parts.length === 0 && (
        <p class="small">
          None in the book yet. <a href={href("parts", `${list}/new`)}>Add {ONE[list]}</a>
        </p>
      )}
      {parts.map(({ id, data }) => {
        const lacks = unusable(book, list, id);
        const ticked = draft.ticked[list].includes(id);
        const refused = problemAt(`${list}.${id}`);
        return (
          <div key={id} class="choose-part">
            <label>
              <input
                type="checkbox"
                checked={ticked}
                disabled={lacks !== null && !ticked}
                onChange={() => onToggle(id)}
              />{" "}
              {data.name} <span class="quiet small">{note(id)}</span>
            </label>
            {lacks && <Lacks lacks={lacks} list={list} id={id} name={data.name} />}
            {refused && (
              <span class="field-error" role="alert">
                {refused} <a href={href("parts", `${list}/${id}`)}>Its form</a>
              </span>
            )}
            {ticked && under?.(id, data.name)}
          </div>
        );
      })}
      {beside}
      {problem && (
        <span class="field-error" role="alert">
          {problem}
        </span>
      )}
    </fieldset>
  );
}

interface LacksProps {
  readonly lacks: Unusable;
  readonly list: PartList;
  readonly id: string;
  readonly name: string;
}

function Lacks({ lacks, list, id, name }: LacksProps) {
  const to = lacks.test ? href("bench", `new/${lacks.test}`) : href("parts", `${list}/${id}`);
  return (
    <small class="quiet choose-lacks">
      {lacks.why}
      {lacks.remedy && (
        <>
          :{" "}
          <a href={to}>
            {lacks.remedy}
            <span class="visually-hidden"> ({name})</span>
          </a>
        </>
      )}
    </small>
  );
}
