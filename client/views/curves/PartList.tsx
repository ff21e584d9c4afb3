import type { Book } from "../../../shared/book/book.ts";
import { href, navigate } from "../../app/router.ts";
import { counted } from "../../ui/count.ts";
import {
  CURVE_COLLECTIONS,
  CURVE_PARTS,
  type CurveCollection,
  type Place,
  RECORD,
  testCountOf,
} from "./address.ts";

interface Entry {
  readonly id: string;
  readonly name: string;
  readonly tests: number;
}

function entries(book: Book, collection: CurveCollection): Entry[] {
  return book[collection].map(({ id, data }) => ({
    id,
    name: data.name,
    tests: testCountOf(book, collection, id),
  }));
}

const countText = ({ tests }: Entry): string => (tests === 0 ? "no test" : counted(tests, "test"));

export interface PartListProps {
  readonly book: Book;
  readonly place: Place | null;
  /** the track record is on the screen, and no part */
  readonly isRecord: boolean;
}

/** The parts whose curves can be looked at, each with the number of tests that bear on it, and the track record of all. */
export function PartList({ book, place, isRecord }: PartListProps) {
  const all = CURVE_COLLECTIONS.map((collection) => ({ collection, parts: entries(book, collection) }));
  const lists = all.filter(({ parts }) => parts.length > 0);
  return (
    <>
      <PartNav lists={lists} place={place} isRecord={isRecord} />
      <PartSelect lists={lists} place={place} isRecord={isRecord} />
    </>
  );
}

interface ListsProps extends Omit<PartListProps, "book"> {
  /** by collection, none of them empty */
  readonly lists: readonly { readonly collection: CurveCollection; readonly parts: readonly Entry[] }[];
}

/** A list of links, where there is room for one. */
function PartNav({ lists, place, isRecord }: ListsProps) {
  const isHere = (collection: CurveCollection, id: string) =>
    place?.collection === collection && place.id === id;
  return (
    <nav class="curves-parts" aria-label="Parts">
      {lists.map(({ collection, parts }) => (
        <section key={collection}>
          <h2>{CURVE_PARTS[collection].title}</h2>
          <ul>
            {parts.map((part) => (
              <li key={part.id}>
                <a
                  href={href("curves", `${collection}/${part.id}`)}
                  aria-current={isHere(collection, part.id) ? "page" : undefined}
                >
                  <span>{part.name}</span>
                  <span class="quiet small">{countText(part)}</span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      ))}
      <section>
        <h2>All builds</h2>
        <ul>
          <li>
            <a href={href("curves", RECORD)} aria-current={isRecord ? "page" : undefined}>
              <span>Record</span>
              <span class="quiet small">predicted, measured</span>
            </a>
          </li>
        </ul>
      </section>
    </nav>
  );
}

/** The same in one line, on a phone. */
function PartSelect({ lists, place, isRecord }: ListsProps) {
  return (
    <label class="curves-part-select field-label">
      Part
      <select
        value={isRecord ? RECORD : place ? `${place.collection}/${place.id}` : ""}
        onChange={(event) => navigate("curves", event.currentTarget.value)}
      >
        {!place && !isRecord && <option value="">Choose a part</option>}
        {lists.map(({ collection, parts }) => (
          <optgroup key={collection} label={CURVE_PARTS[collection].title}>
            {parts.map((part) => (
              <option key={part.id} value={`${collection}/${part.id}`}>
                {part.name} · {countText(part)}
              </option>
            ))}
          </optgroup>
        ))}
        <optgroup label="All builds">
          <option value={RECORD}>Record: predicted, measured</option>
        </optgroup>
      </select>
    </label>
  );
}
