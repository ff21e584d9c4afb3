import type { Book } from "../../../../shared/book/book.ts";
import type { RecordEntry, TrackRecord } from "../../../../shared/model/api/record.ts";
import { href } from "../../../app/router.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import { Answer } from "../../../ui/Answer.tsx";
import { counted } from "../../../ui/count.ts";
import { DocLink } from "../../../ui/Docs.tsx";
import { dayText } from "../../../ui/moment.ts";
import { Status } from "../../../ui/Status.tsx";
import type { Table } from "../../../ui/table.ts";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import { useChosen } from "../chosen.ts";
import { Facts, Page } from "../Page.tsx";
import { PointPanel } from "../PointPanel.tsx";
import { testName } from "../typed.ts";
import { keyOf, recordPlot, shownEntries } from "./recordPlot.ts";
import {
  basisSentence,
  insideText,
  measuredText,
  offSentences,
  predictedText,
  recordSentence,
} from "./recordWords.ts";
import { recordBoard } from "./recordWorkings.ts";
import { useRecord } from "./useRecord.ts";

const tall = (width: number) => Math.max(280, Math.min(400, width * 0.5));

/** Predicted against measured, over all builds. */
export function RecordView({ book }: { book: Book }) {
  const { record, problem } = useRecord(book);
  if (!record)
    return (
      <Page
        picture={<Answer sentence={problem ?? "Reading what was predicted…"} />}
        meaning={<p class="quiet">Each pull, leak test and drive keeps the prediction of its moment.</p>}
      />
    );
  return <Shown book={book} record={record} problem={problem} />;
}

interface ShownProps {
  readonly book: Book;
  readonly record: TrackRecord;
  readonly problem: string | null;
}

function Shown({ book, record, problem }: ShownProps) {
  const chosen = useChosen(book.tests);
  const { entries, missing } = record;
  const nameOf = namer(book);
  const basis = basisSentence(record);
  const describe = (key: string) =>
    entries.filter((entry) => keyOf(entry) === key).flatMap((entry) => wordsOf(entry, nameOf));
  const picture = (
    <>
      <Answer sentence={recordSentence(record)}>{offSentences(record).join(" ")}</Answer>
      {problem && <p class="near">{problem}</p>}
      {missing > 0 && (
        <Status class="quiet">
          Predicting {counted(missing, "earlier test")} afterwards, each as if it weren't there…
        </Status>
      )}
      {shownEntries(entries).length > 0 && (
        <PlotChart
          name="track record"
          sentence="What was measured over what was predicted, reading by reading: whiskers span the predicted 5 to 95 %, brackets run from held to let go."
          plot={recordPlot(entries)}
          height={tall}
          tableTitle="Readings and predictions"
          table={() => tableOf(entries, nameOf)}
          reading={{ describe, label: "Readings", chosen: chosen.key, onChoose: chosen.choose }}
        />
      )}
    </>
  );
  const meaning = (
    <>
      {chosen.test && <PointPanel test={chosen.test} row={chosen.row} onClose={chosen.close} />}
      <section>
        <h2>How far to trust it</h2>
        <Facts facts={insideText(record) ? [{ label: "within 5 to 95 %", text: insideText(record) }] : []} />
        {insideText(record) && <ShowWorking of={() => recordBoard(record)} />}
        {basis && <p>{basis}</p>}
        <p class="quiet">
          A prediction is kept with its test when the test is logged, and never worked out again. The band is
          that of one reading, its scatter included: <DocLink path="method/record.md">how it is made</DocLink>
          , <DocLink path="accuracy.md">what the figures were held against</DocLink>.
        </p>
      </section>
      <Outside entries={entries} nameOf={nameOf} />
    </>
  );
  return <Page picture={picture} meaning={meaning} />;
}

type NameOf = (test: string) => string;

function namer(book: Book): NameOf {
  const names = new Map(book.tests.map((test) => [test.id, testName(test)]));
  return (test) => names.get(test) ?? test;
}

const basisText = ({ basis }: RecordEntry) => (basis === "then" ? "as it was logged" : "afterwards");

const verdictText = ({ inside }: RecordEntry): string =>
  inside === null ? "" : inside ? "inside" : "outside";

function wordsOf(entry: RecordEntry, nameOf: NameOf): string[] {
  return [
    `${nameOf(entry.test)}, row ${entry.row + 1}`,
    `measured ${measuredText(entry)}`,
    `predicted ${basisText(entry)}: ${predictedText(entry)}`,
  ];
}

function tableOf(entries: readonly RecordEntry[], nameOf: NameOf): Table {
  return {
    columns: ["day", "test", "row", "measured", "predicted", "band", "predicted when"],
    rows: entries.map((entry) => [
      entry.date,
      nameOf(entry.test),
      entry.row + 1,
      measuredText(entry),
      predictedText(entry),
      verdictText(entry),
      basisText(entry),
    ]),
  };
}

/** The readings that their bands missed, the newest first, each a way to its test. */
function Outside({ entries, nameOf }: { entries: readonly RecordEntry[]; nameOf: NameOf }) {
  const missed = entries.filter(({ inside }) => inside === false).toReversed();
  if (missed.length === 0) return null;
  return (
    <section>
      <h2>Outside the band</h2>
      <ul class="curves-list">
        {missed.slice(0, MOST).map((entry) => (
          <li key={keyOf(entry)}>
            <a href={href("bench", entry.test)}>{nameOf(entry.test)}</a>
            <span class="quiet small">
              {" "}
              {dayText(entry.date)}, row {entry.row + 1}: {measuredText(entry)}; predicted{" "}
              {predictedText(entry)}
            </span>
          </li>
        ))}
      </ul>
      {missed.length > MOST && <p class="quiet small">and {missed.length - MOST} more, in the table.</p>}
    </section>
  );
}

/** As many lines as are read. */
const MOST = 8;
