import { useMemo } from "preact/hooks";
import { balanceOf } from "../../../../shared/book/mass/balance.ts";
import { balanceBoard } from "../../../../shared/book/mass/workings.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { Figure } from "../../../charts/Figure.tsx";
import type { Picture } from "../../../charts/picture.ts";
import { inOrder, nearestSpot } from "../../../charts/read/spots.ts";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import { massText } from "../massWords.ts";
import { balanceSentence, mm } from "./balanceWords.ts";
import { type BalancePicture, balanceHeight, balanceSpots, drawBalance } from "./drawBalance.ts";
import { PartPlaces } from "./PartPlaces.tsx";

function pictureOf(of: BalancePicture): Picture {
  return (size) => {
    const spots = balanceSpots(of, size);
    return {
      draw: (svg) => drawBalance(svg, of, size),
      count: spots.length,
      layout: null,
      spots: () => inOrder(spots),
      under: (at, reach) => nearestSpot(spots, at, reach),
      hairline: null,
    };
  };
}

export interface BalanceSectionProps {
  readonly book: Book;
  /** with what is typed and tried */
  readonly shown: Build;
  /** as it is stored */
  readonly build: StoredOf<"builds">;
  /** @returns why it was refused; null where it was stored */
  readonly onSave: (build: Build) => Promise<string | null>;
}

/** Where the masses stand, and the centre of gravity that comes of it: it tips and climbs by that. */
export function BalanceSection({ book, shown, build, onSave }: BalanceSectionProps) {
  const of = useMemo((): BalancePicture => {
    const balance = balanceOf(book, shown);
    const { wheelbase, suctionFromRear, cgFromRear, cgHeight } = shown.vehicle;
    const typed = { fromRear: cgFromRear, height: cgHeight };
    const centre = balance.isWhole && balance.centre ? balance.centre : typed;
    return { balance, wheelbase, suction: suctionFromRear, centre };
  }, [book, shown]);
  const picture = useMemo(() => pictureOf(of), [of]);
  const { lines } = of.balance;
  return (
    <section aria-label="Balance">
      <h2>Balance</h2>
      <p>{balanceSentence(of.balance, shown)}</p>
      <Figure
        sentence={balanceSentence(of.balance, shown)}
        picture={picture}
        height={balanceHeight}
        name={`balance ${shown.name}`}
        table={() => ({
          columns: [
            "What",
            headed("Mass", "mass"),
            headed("Ahead of the rear axle", "length"),
            headed("Over the surface", "length"),
          ],
          rows: lines.map(({ name, mass, place }) => [
            name,
            inUnit(mass, "mass"),
            place && inUnit(place.fromRear, "length"),
            place && inUnit(place.height, "length"),
          ]),
        })}
        tableTitle="The places as a table"
        reading={{
          label: "Masses and their places",
          describe: (key) =>
            lines
              .filter(({ name, place }) => name === key && place)
              .flatMap(({ name, mass, place }) =>
                place ? [name, massText(mass), `${mm(place.fromRear)}, ${mm(place.height)} high`] : [],
              ),
        }}
      >
        <p class="quiet small">
          From the side, to scale: each mass a circle of its size, the cross the centre of gravity.
        </p>
      </Figure>
      {of.balance.centre && <ShowWorking of={() => balanceBoard(book, shown)} />}
      <PartPlaces key={build.revision} build={build.data} onSave={onSave} />
    </section>
  );
}
