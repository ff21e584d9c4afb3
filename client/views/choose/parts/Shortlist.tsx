import { useState } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { marginText } from "../../../../shared/decide/verdict/figures.ts";
import { isDestroyed } from "../../../../shared/decide/verdict/states.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { sureText } from "../../../ui/uncertaintyWords.ts";
import { useSaid } from "../../../ui/useSaid.ts";
import { StateMark } from "../../../ui/verdict/StateMark.tsx";
import { FigureOf } from "../../../ui/working/FigureOf.tsx";
import type { ShortlistAnswer } from "../answers.ts";
import type { Fetched } from "../state/fetched.ts";
import { restText, sizedRotorText } from "../words/combination.ts";
import { enoughText, placeText, tiesText } from "../words/ties.ts";
import { Fact } from "./Fact.tsx";
import { CHANCE_TITLE, REACHED_TITLE, sampledCombinationBoard } from "./marginWorkings.ts";

export const RANKS = [
  ["margin5", "margin that 95 of 100 reach"],
  ["chance", "chance of holding"],
  ["margin", "margin as it comes out"],
] as const;
export type Rank = (typeof RANKS)[number][0];

export interface ShortlistProps {
  readonly book: Book;
  readonly fetched: Fetched<ShortlistAnswer>;
  readonly rank: Rank;
  readonly onRank: (rank: Rank) => void;
  /** gives what a combination doesn't; null where the book no longer has it */
  readonly base: Build | null;
  readonly wants: ChooseRequest["wants"];
  readonly onLook: (index: number) => void;
}

const FIRST = 6;

/** The first combinations with their uncertainty worked out: the better verdict first, then by what is surest; combinations within their uncertainty tie. */
export function Shortlist(props: ShortlistProps) {
  const { fetched, rank } = props;
  const [whole, setWhole] = useState(false);
  const items = fetched.data?.items ?? [];
  useSaid(fetched.data ? enoughText(items, props.wants.leastChance) : null, "said");
  const shown = whole ? items : items.slice(0, FIRST);
  return (
    <section class="choose-shortlist" aria-label="Shortlist" aria-busy={fetched.busy}>
      <h2>Shortlist</h2>
      <label>
        <span class="quiet">by</span>{" "}
        <select value={rank} onChange={(event) => props.onRank(RANKS[event.currentTarget.selectedIndex][0])}>
          {RANKS.map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
      {fetched.busy && (
        <p class="quiet small">Each of them is worked out 2048 times, its numbers drawn anew each time…</p>
      )}
      {fetched.problem && <Problem message={fetched.problem.message} />}
      {fetched.data && (
        <div>
          {fetched.data.undoubted ? (
            <p class="near small">
              No part of these states how sure its numbers are: the chances say nothing, and nothing ties.
            </p>
          ) : (
            <p class="small">{tiesText(items)}</p>
          )}
          <p class="small">{enoughText(items, props.wants.leastChance)}</p>
          <ol class="choose-items choose-ranked">
            {shown.map((item, i) => (
              <Item key={item.set.index} {...props} items={items} at={i} />
            ))}
          </ol>
          {items.length > FIRST && (
            <button type="button" class="plain small" onClick={() => setWhole(!whole)}>
              {whole ? "Fewer" : `All ${items.length}`}
            </button>
          )}
        </div>
      )}
    </section>
  );
}

interface ItemProps extends ShortlistProps {
  readonly items: ShortlistAnswer["items"];
  readonly at: number;
}

function Item({ book, base, items, at, onLook, wants }: ItemProps) {
  const { set: combination, verdict, enough } = items[at];
  const ofCombination = { book, base, combination, wants };
  return (
    <li>
      <span class="choose-place">{placeText(items, at)}</span>
      <div>
        <button type="button" class="plain" onClick={() => onLook(combination.index)}>
          {sizedRotorText(book, combination)}
        </button>
        <small class="quiet">{restText(book, combination)}</small>
        <small title={verdict.reason}>
          <StateMark state={verdict.state} />
        </small>
        <small class={isDestroyed(verdict.state) ? "void" : undefined}>
          <Fact {...ofCombination} column="margin" />; <Sureness {...ofCombination} of={items[at]} />
          {wants.leastKeptTime !== null && combination.values.keptTime !== null && (
            <>
              ; kept for <Fact {...ofCombination} column="keptTime" />
            </>
          )}
          {wants.leastChance !== null && !enough && <span class="bad">, chance too small</span>}
        </small>
      </div>
    </li>
  );
}

interface SurenessProps extends Pick<ShortlistProps, "book" | "base" | "wants"> {
  readonly of: ShortlistAnswer["items"][number];
}

/** The margin that most samples reach and the chance of holding, each with its working. */
function Sureness({ book, base, wants, of: { set: combination, margin5, chance } }: SurenessProps) {
  const board = base && (() => sampledCombinationBoard({ book, base, combination, wants }));
  const reached = marginText(margin5);
  return (
    <>
      95 of 100 reach{" "}
      {board && margin5 ? (
        <FigureOf board={board} title={REACHED_TITLE} value={margin5}>
          {reached}
        </FigureOf>
      ) : (
        reached
      )}
      ; chance of holding{" "}
      {board ? (
        <FigureOf board={board} title={CHANCE_TITLE} value={chance}>
          {sureText(chance)}
        </FigureOf>
      ) : (
        sureText(chance)
      )}
    </>
  );
}
