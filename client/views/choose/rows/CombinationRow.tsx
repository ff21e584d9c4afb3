import type { ComponentChildren } from "preact";
import type { Book } from "../../../../shared/book/book.ts";
import { Mark } from "../../../ui/Mark.tsx";
import { letterAt } from "../../compare/letterAt.ts";
import type { Column, Combination } from "../answers.ts";
import { cellText } from "../columns.ts";
import { Fact, type FactProps } from "../parts/Fact.tsx";
import { kindText, packText, restText, sizedRotorText, skirtText, trustMarks } from "../words/combination.ts";

export interface CombinationRowProps extends Pick<FactProps, "base" | "wants"> {
  readonly book: Book;
  readonly pins: readonly number[];
  readonly onLook: (index: number) => void;
  readonly onPin: (index: number) => void;
  readonly onOpen: (combination: Combination) => void;
  /** the columns that stand in the table */
  readonly shown: readonly Column[];
  readonly place: number;
  readonly combination: Combination;
  readonly looked: boolean;
}

/** One combination: what it is made of, its figures, and what can be done with it. Of the one that is looked at each figure opens to its working. */
export function CombinationRow({
  book,
  base,
  wants,
  shown,
  place,
  combination,
  looked,
  pins,
  onLook,
  onPin,
  onOpen,
}: CombinationRowProps) {
  const pinned = pins.indexOf(combination.index);
  const stop = (act: () => void) => (event: Event) => {
    event.stopPropagation();
    act();
  };
  return (
    <tr
      class={looked ? "choose-row looked" : "choose-row"}
      aria-rowindex={place + 2}
      aria-current={looked ? "true" : undefined}
      onClick={() => onLook(combination.index)}
    >
      <th scope="row" title={`${sizedRotorText(book, combination)} · ${restText(book, combination)}`}>
        <button
          type="button"
          class="plain choose-line"
          tabIndex={-1}
          onClick={stop(() => onLook(combination.index))}
        >
          {pinned >= 0 && <b class="choose-letter">{letterAt(pinned)}</b>} {sizedRotorText(book, combination)}
        </button>
        <small class="quiet choose-line">
          <Marks combination={combination} /> {packText(book, combination)}
        </small>
        <small class="quiet choose-line">
          <span class="choose-kind">{kindText(combination)}</span>, {skirtText(book, combination)}
        </small>
      </th>
      <FigureCells {...{ book, base, wants, shown, combination, looked }} />
      <td class="choose-acts">
        <Act
          label={pinned >= 0 ? "unpin" : "pin"}
          tabIndex={-1}
          onAct={stop(() => onPin(combination.index))}
        />
        <Act label="open" tabIndex={-1} onAct={stop(() => onOpen(combination))} />
      </td>
    </tr>
  );
}

type FigureCellsProps = Pick<
  CombinationRowProps,
  "book" | "base" | "wants" | "shown" | "combination" | "looked"
>;

/** Its figures; of the one that is looked at each opens to its working. */
function FigureCells({ shown, looked, combination, ...of }: FigureCellsProps) {
  const inside = combination.broken.length === 0;
  const figure = (column: Column) => {
    const text = cellText(column, combination.values[column]);
    return looked ? <Fact {...of} combination={combination} column={column} text={text} /> : text;
  };
  return (
    <>
      {shown.map((column) => (
        <td key={column} class={column === "margin" ? (inside ? "good" : "bad") : undefined}>
          {figure(column)}
          {column === "margin" && <small class="choose-word">{inside ? "works" : "out"}</small>}
        </td>
      ))}
    </>
  );
}

interface ActProps {
  readonly label: ComponentChildren;
  readonly tabIndex?: number;
  readonly onAct: (event: Event) => void;
}

function Act({ label, tabIndex, onAct }: ActProps) {
  return (
    <button type="button" class="plain small choose-act" tabIndex={tabIndex} onClick={onAct}>
      {label}
    </button>
  );
}

/** The words of a combination that does not rest on measurements of its own size alone. */
export function Marks({ combination }: { readonly combination: Combination }) {
  return (
    <>
      {trustMarks(combination).map(({ word, title }) => (
        <span key={word}>
          <Mark word={word} title={title} />{" "}
        </span>
      ))}
    </>
  );
}
