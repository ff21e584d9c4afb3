import { useMemo } from "preact/hooks";
import { type Book, findById } from "../../../shared/book/book.ts";
import type { DataOf, StoredOf } from "../../../shared/model/record.ts";
import { formatQuantity } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import { Answer } from "../../ui/Answer.tsx";
import { Empty } from "../../ui/Empty.tsx";
import { AsideList } from "./AsideList.tsx";
import { testsOfPart } from "./address.ts";
import { CalibrationSection } from "./calibration/CalibrationSection.tsx";
import { isCompared } from "./calibration/calibrationData.ts";
import { type Chosen, useChosen } from "./chosen.ts";
import { LeakMeaning } from "./leak/LeakMeaning.tsx";
import { LeakSection } from "./leak/LeakSection.tsx";
import { type LeakPage, leakPage } from "./leak/leakData.ts";
import { exponentText, leakSentence } from "./leak/leakSentence.ts";
import { Facts, Page } from "./Page.tsx";
import { PointPanel } from "./PointPanel.tsx";
import { PullMeaning } from "./pull/PullMeaning.tsx";
import { PullSection } from "./pull/PullSection.tsx";
import { type PullPage, pullPage } from "./pull/pullData.ts";
import { pullSentence, ratioText } from "./pull/pullSentence.ts";
import { TestList } from "./TestList.tsx";

/** What the tests of a skirt say. */
interface OfSkirt {
  readonly book: Book;
  readonly skirt: StoredOf<"skirts">;
  readonly tests: readonly StoredOf<"tests">[];
  readonly chosen: Chosen;
  readonly leak: LeakPage;
  readonly pull: PullPage;
}

/** A skirt's page: its leak and the pulls made with it. */
export function SkirtView({ book, id }: { book: Book; id: string }) {
  const tests = testsOfPart(book, "skirts", id);
  const chosen = useChosen(tests);
  const skirt = findById(book.skirts, id);
  const leak = useMemo(() => leakPage(book, "skirt", id), [book, id]);
  const pull = useMemo(() => pullPage(book, "skirt", id), [book, id]);
  if (!skirt) return null;
  if (tests.length === 0)
    return (
      <Empty
        title={`What ${skirt.data.name} leaks is computed from its gap alone; no test of it is logged.`}
        action={{ label: "Log a leak test", href: href("bench", "new/leak", { skirt: id }) }}
      >
        <p>A leak test or a pull test with this skirt fills this page.</p>
      </Empty>
    );
  const ofSkirt = { book, skirt, tests, chosen, leak, pull };
  return <Page picture={<Picture {...ofSkirt} />} meaning={<Meaning {...ofSkirt} />} />;
}

function Picture({ book, skirt, tests, chosen, leak, pull }: OfSkirt) {
  const { name } = skirt.data;
  const hasLeak = leak.groups.length > 0;
  return (
    <>
      <Answer sentence={hasLeak ? leakSentence(leak.groups[0]) : pullSentence(pull)}>
        {hasLeak &&
          leak.groups[0].fit &&
          `Its flow goes as pressure to the ${exponentText(leak.groups[0])}. `}
        {hasLeak && pull.ratio && `Pulls come out at ${ratioText(pull)} × the prediction.`}
      </Answer>
      {hasLeak && <LeakSection page={leak} part="skirt" name={name} tests={tests} chosen={chosen} answered />}
      <CalibrationSection book={book} part="skirt" id={skirt.id} chosen={chosen} />
      {pull.points.length > 0 && (
        <PullSection
          page={pull}
          name={name}
          tests={tests}
          chosen={chosen}
          answered={!hasLeak}
          compared={isCompared(book, "skirt", skirt.id)}
        />
      )}
    </>
  );
}

function factsOf({ gap, gapBasis, perimeter, land, area }: DataOf<"skirts">) {
  return [
    {
      label: gapBasis === "measured" ? "gap as measured" : "gap as set",
      text: formatQuantity(gap, "length"),
    },
    { label: "lip", text: formatQuantity(perimeter, "length") },
    { label: "land", text: formatQuantity(land, "length") },
    { label: "area inside", text: formatQuantity(area, "area") },
  ];
}

function Meaning({ skirt, tests, chosen, leak, pull }: OfSkirt) {
  return (
    <>
      <PointPanel test={chosen.test} row={chosen.row} onClose={chosen.close} />
      <section>
        <h2>{skirt.data.name}</h2>
        <Facts facts={factsOf(skirt.data)} />
      </section>
      {leak.groups.length > 0 && <LeakMeaning page={leak} part="skirt" />}
      {pull.points.length > 0 && <PullMeaning page={pull} />}
      <TestList tests={tests} />
      <AsideList tests={tests} onChoose={chosen.choose} />
    </>
  );
}
