import type { Book } from "../../../shared/book/book.ts";
import { href, navigate } from "../../app/router.ts";
import { counted } from "../../ui/count.ts";
import { CURVE_COLLECTIONS, CURVE_PARTS, type CurveCollection, type Place, testsOfPart } from "./address.ts";

interface Entry {
  readonly id: string;
  readonly name: string;
  readonly tests: number;
}

function entries(book: Book, collection: CurveCollection): Entry[] {
  return book[collection].map(({ id, data }) => ({
    id,
    name: data.name,
    tests: testsOfPart(book, collection, id).length,
  }));
}

/** The parts whose curves can be looked at, each with the number of tests that bear on it. */
export function PartList({ book, place }: { book: Book; place: Place | null }) {
  const lists = CURVE_COLLECTIONS.map((collection) => ({ collection, parts: entries(book, collection) }));
  const filled = lists.filter(({ parts }) => parts.length > 0);
  return (
    <>
      <nav class="curves-parts" aria-label="Parts">
        {filled.map(({ collection, parts }) => (
          <section key={collection}>
            <h2>{CURVE_PARTS[collection].title}</h2>
            <ul>
              {parts.map((part) => (
                <li key={part.id}>
                  <a
                    href={href("curves", `${collection}/${part.id}`)}
                    aria-current={
                      place?.collection === collection && place.id === part.id ? "page" : undefined
                    }
                  >
                    <span>{part.name}</span>
                    <span class="quiet small">
                      {part.tests === 0 ? "no test" : counted(part.tests, "test")}
                    </span>
                  </a>
                </li>
              ))}
            </ul>
          </section>
        ))}
      </nav>
      <label class="curves-part-select field-label">
        Part
        <select
          value={place ? `${place.collection}/${place.id}` : ""}
          onChange={(event) => navigate("curves", event.currentTarget.value)}
        >
          {!place && <option value="">Choose a part</option>}
          {filled.map(({ collection, parts }) => (
            <optgroup key={collection} label={CURVE_PARTS[collection].title}>
              {parts.map((part) => (
                <option key={part.id} value={`${collection}/${part.id}`}>
                  {part.name} · {part.tests === 0 ? "no test" : counted(part.tests, "test")}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </label>
    </>
  );
}
