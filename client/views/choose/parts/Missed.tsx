import { useState } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { Caution } from "../../../ui/Caution.tsx";
import type { MissedAnswer } from "../answers.ts";
import type { Draft } from "../form/draft.ts";
import { reliefOf, reliefOfCombination } from "../relax.ts";
import { restText, sizedRotorText } from "../words/combination.ts";
import { brokenText, LIMIT_NAMES, wantedNames } from "../words/limits.ts";

export interface MissedProps {
  readonly book: Book;
  readonly base: Build | null;
  readonly wants: ChooseRequest["wants"];
  readonly missed: MissedAnswer;
  readonly onRelax: (change: (draft: Draft) => Draft) => void;
  readonly onLook: (index: number) => void;
}

/** What keeps the combinations out, which limit to relax by how much, and which combinations come nearest. */
export function Missed({ book, base, wants, missed, onRelax, onLook }: MissedProps) {
  const reliefs = missed.relaxations.map((relaxation) => reliefOf(relaxation, wants));
  const together = missed.nearest.flatMap(
    ({ set: combination }) => reliefOfCombination(combination, wants) ?? [],
  );
  const cautions = new Set([...reliefs, ...together].flatMap(({ caution }) => caution ?? []));
  const names = wantedNames(wants, base);
  return (
    <section class="choose-missed" aria-label="What would work">
      {missed.admissible === 0 && (
        <>
          <h2>What would work</h2>
          {reliefs.length === 0 && (
            <p>
              No single limit lets a combination in: each breaks two or more. Relax several at once, as the
              nearest combinations need it, or try other parts.
            </p>
          )}
          <ul class="choose-reliefs">
            {reliefs.map(({ limit, label, apply, index }) => (
              <li key={limit}>
                {apply ? (
                  <button type="button" onClick={() => onRelax(apply)}>
                    {label}
                  </button>
                ) : (
                  <span>{label}.</span>
                )}{" "}
                {apply && (
                  <span class="quiet small">
                    and a combination works:{" "}
                    <button type="button" class="plain" onClick={() => onLook(index)}>
                      look at it
                    </button>
                  </span>
                )}
              </li>
            ))}
          </ul>
          {[...cautions].map((caution) => (
            <Caution key={caution}>{caution}</Caution>
          ))}
          <Nearest
            book={book}
            missed={missed}
            names={names}
            wants={wants}
            onLook={onLook}
            onRelax={onRelax}
          />
        </>
      )}
      <KeptOut missed={missed} />
    </section>
  );
}

interface NearestProps extends Pick<MissedProps, "book" | "missed" | "onLook" | "wants" | "onRelax"> {
  readonly names: ReturnType<typeof wantedNames>;
}

const FIRST = 4;

function Nearest({ book, missed, names, wants, onLook, onRelax }: NearestProps) {
  const [whole, setWhole] = useState(false);
  const { nearest } = missed;
  if (nearest.length === 0) return null;
  return (
    <>
      <h2>The nearest combinations</h2>
      <ol class="choose-items">
        {nearest.slice(0, whole ? nearest.length : FIRST).map(({ set: combination }) => {
          const relief = reliefOfCombination(combination, wants);
          const apply = relief?.apply;
          return (
            <li key={combination.index}>
              <button type="button" class="plain" onClick={() => onLook(combination.index)}>
                {sizedRotorText(book, combination)}
              </button>
              <small class="quiet">{restText(book, combination)}</small>
              <small class="bad">
                {combination.broken.map((broken) => brokenText(broken, names)).join("; ")}
              </small>
              {relief && apply && combination.broken.length > 1 && (
                <button type="button" class="plain small" onClick={() => onRelax(apply)}>
                  {relief.label}
                </button>
              )}
            </li>
          );
        })}
      </ol>
      {nearest.length > FIRST && (
        <button type="button" class="plain small" onClick={() => setWhole(!whole)}>
          {whole ? "Fewer" : `All ${nearest.length}`}
        </button>
      )}
    </>
  );
}

/** How many combinations each limit keeps out. */
function KeptOut({ missed }: Pick<MissedProps, "missed">) {
  const limits = missed.limits.filter(({ broken }) => broken > 0);
  if (limits.length === 0) return null;
  return (
    <table class="choose-grid choose-kept-out">
      <caption class="small quiet">What keeps combinations out</caption>
      <thead>
        <tr>
          <th scope="col" class="choose-head">
            Limit
          </th>
          <th scope="col" class="choose-head">
            Combinations
          </th>
          <th scope="col" class="choose-head">
            By it alone
          </th>
        </tr>
      </thead>
      <tbody>
        {limits.map(({ limit, broken, alone }) => (
          <tr key={limit}>
            <th scope="row">{LIMIT_NAMES[limit] ?? limit}</th>
            <td>{formatFixed(broken, 0)}</td>
            <td>{formatFixed(alone, 0)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
