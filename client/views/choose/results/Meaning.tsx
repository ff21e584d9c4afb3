import { Caution } from "../../../ui/Caution.tsx";
import { chargeText } from "../../../ui/chargeWords.ts";
import { CombinationPanel } from "../parts/CombinationPanel.tsx";
import { Pinned } from "../parts/Pinned.tsx";
import { type Rank, Shortlist } from "../parts/Shortlist.tsx";
import { MOST_PINNED } from "../state/shown.ts";
import type { OfResults } from "./ofResults.ts";

export interface MeaningProps extends OfResults {
  /** what the shortlist is ranked by */
  readonly rank: Rank;
  readonly onRank: (rank: Rank) => void;
}

/** The combination that is looked at, the shortlist, the pinned ones. */
export function Meaning({
  book,
  base,
  job,
  known,
  shown,
  rank,
  onRank,
  onLook,
  onPin,
  onOpen,
}: MeaningProps) {
  const { wants } = job.request;
  const { looked } = known;
  return (
    <section class="page-aside" aria-label="What it means">
      {looked && (
        <CombinationPanel
          book={book}
          base={base}
          wants={wants}
          combination={looked}
          pin={shown.pins.indexOf(looked.index)}
          canPin={shown.pins.includes(looked.index) || shown.pins.length < MOST_PINNED}
          onPin={() => onPin(looked.index)}
          onOpen={() => onOpen(looked)}
        />
      )}
      {job.admissible > 0 && (
        <Shortlist
          book={book}
          fetched={known.shortlist}
          rank={rank}
          onRank={onRank}
          base={base}
          wants={wants}
          onLook={onLook}
        />
      )}
      <Pinned
        book={book}
        base={base}
        job={job.id}
        pins={shown.pins}
        combinations={known.pinned}
        onLook={onLook}
        onPin={onPin}
      />
      <Caution>Spinning rotors throw fragments: guard, goggles, stay out of the rotor's plane.</Caution>
      <Caution>
        The minutes run from {base ? chargeText(base.charge) : "the start charge"} to its end; a vehicle on a
        wall or ceiling may let go before: tether it.
      </Caution>
    </section>
  );
}
