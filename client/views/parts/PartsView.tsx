import type { Book } from "../../../shared/book/resolve.ts";
import type { Stored } from "../../../shared/model/record.ts";
import { offered, withdrawnOf } from "../../../shared/model/withdrawn.ts";
import { href, route } from "../../app/router.ts";
import { WaitingList } from "../../app/waiting/WaitingList.tsx";
import { currentBook } from "../../state/book.ts";
import { waitingFor, waitingUnder } from "../../state/waiting/list.ts";
import { withArticle } from "../../ui/article.ts";
import { downloadText } from "../../ui/download.ts";
import { Empty } from "../../ui/Empty.tsx";
import { toCsv } from "../../ui/table.ts";
import { compareAddress } from "../compare/asked.ts";
import { FORMS } from "./forms.ts";
import { Known } from "./Known.tsx";
import { PartRow } from "./list/PartRow.tsx";
import { PartForm } from "./PartForm.tsx";
import { partsTable } from "./partsCsv.ts";
import type { FormSpec } from "./spec.ts";

/** Parts and builds: lists, and a form for each. */
export default function PartsView() {
  const book = currentBook.value;
  if (!book) return null;
  const [collection, id] = (route.value.id ?? "").split("/");
  if (!collection) return <Lists book={book} />;
  const form = FORMS.find((each) => each.collection === collection);
  const list = { label: "Show parts and builds", href: href("parts") };
  if (!form) return <Empty title={`There are no “${collection}” here.`} action={list} />;
  if (!id || id === "new") {
    const key = route.value.query.get("waiting");
    const item = key === null ? null : waitingUnder(key);
    const waiting = item?.collection === form.collection ? item : null;
    return <PartForm key={`${collection} new ${key}`} form={form} record={null} waiting={waiting} />;
  }
  const record = recordsOf(book, form).find((each) => each.id === id);
  if (!record) return <Empty title={`The bench book has no such ${form.one}.`} action={list} />;
  const waiting = waitingFor(form.collection, id);
  return (
    <div class="part-page">
      <PartForm key={record.id} form={form} record={record} waiting={waiting} />
      <Known book={book} form={form} id={record.id} />
    </div>
  );
}

function recordsOf(book: Book, form: FormSpec) {
  return book[form.collection] as readonly Stored<{
    readonly name: string;
    readonly retired?: string;
    readonly [key: string]: unknown;
  }>[];
}

function Lists({ book }: { book: Book }) {
  const saved = route.value.query.get("saved");
  return (
    <div class="parts">
      <h1>Parts and builds</h1>
      <p class="quiet">
        Tests are logged on the <a href={href("bench")}>Bench</a>; what they are logged for stands here.
      </p>
      <WaitingList />
      <div class="parts-lists">
        {FORMS.map((form) => (
          <section key={form.collection} aria-label={form.many}>
            <h2>{form.many}</h2>
            {offered(recordsOf(book, form), null).length === 0 && <p class="quiet small">{form.fills}</p>}
            <ul>
              {offered(recordsOf(book, form), null).map((record) => (
                <PartRow
                  key={record.id}
                  book={book}
                  form={form}
                  record={record}
                  saved={saved === `${form.collection}/${record.id}`}
                />
              ))}
            </ul>
            <Retired book={book} form={form} />
            <a class="button" href={href("parts", `${form.collection}/new`)}>
              Add {withArticle(form.one)}
            </a>{" "}
            {form.collection === "builds" && book.builds.length > 1 && (
              <>
                <a class="button" href={compareAddress(offered(book.builds, null).map(({ id }) => id))}>
                  Compare builds
                </a>{" "}
              </>
            )}
            {recordsOf(book, form).length > 0 && (
              <button
                type="button"
                class="plain"
                aria-label={`Save ${form.many} as CSV`}
                onClick={() =>
                  downloadText(toCsv(partsTable(form, recordsOf(book, form), book)), `${form.collection}.csv`)
                }
              >
                CSV
              </button>
            )}
          </section>
        ))}
      </div>
    </div>
  );
}

/** Parts out of use, closed until they are asked for; each says why. */
function Retired({ book, form }: { book: Book; form: FormSpec }) {
  const retired = recordsOf(book, form).filter(({ data }) => withdrawnOf(data) !== null);
  if (retired.length === 0) return null;
  return (
    <details class="parts-retired">
      <summary>{retired.length} retired</summary>
      <ul>
        {retired.map(({ id, data }) => (
          <li key={id}>
            <a href={href("parts", `${form.collection}/${id}`)}>{data.name}</a>
            <span class="small quiet">{withdrawnOf(data)}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}
