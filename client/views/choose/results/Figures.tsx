import { href } from "../../../app/router.ts";
import type { Combination } from "../answers.ts";
import { shownQuery } from "../state/shown.ts";
import { sizedRotorText } from "../words/combination.ts";
import { tookText } from "../words/searchSentences.ts";
import type { OfResults } from "./ofResults.ts";

/** The line under the answer: which combinations are the lightest, the surest and the strongest. */
export function Figures({ book, job, known, shown, onLook }: OfResults) {
  const { lightest, best, kinds, shortlist } = known;
  const surest = shortlist.data?.items[0]?.set ?? null;
  const most = job.admissible > 0 ? best : null;
  const same = surest !== null && surest.index === most?.index;
  const named: [string, Combination | null][] = [
    ["Lightest", lightest],
    [same ? "Surest, and most to spare" : "Surest", surest],
    ["Most to spare", same || kinds ? null : most],
    ["Most to spare in a duct", kinds?.ducted ?? null],
    ["Most to spare with an open propeller", kinds?.open ?? null],
  ];
  const lacking =
    kinds && (kinds.ducted === null ? "rotor in a duct" : kinds.open === null ? "open propeller" : null);
  return (
    <>
      {named.map(
        ([what, combination]) =>
          combination && (
            <span key={what}>
              {what}:{" "}
              <a
                href={href("choose", job.id, shownQuery({ ...shown, look: combination.index }))}
                onClick={(event) => {
                  event.preventDefault();
                  onLook(combination.index);
                }}
              >
                {sizedRotorText(book, combination)}
              </a>
              {". "}
            </span>
          ),
      )}
      {lacking && `No ${lacking} works. `}
      {tookText(job)}
    </>
  );
}
