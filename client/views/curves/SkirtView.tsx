import { useMemo } from "preact/hooks";
import { type Book, findById } from "../../../shared/book/book.ts";
import { formatQuantity } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import { Answer } from "../../ui/Answer.tsx";
import { Empty } from "../../ui/Empty.tsx";
import { AsideList } from "./AsideList.tsx";
import { testsOfPart } from "./address.ts";
import { CalibrationSection } from "./calibration/CalibrationSection.tsx";
import { isCompared } from "./calibration/calibrationData.ts";
import { useChosen } from "./chosen.ts";
import { LeakMeaning } from "./leak/LeakMeaning.tsx";
import { LeakSection } from "./leak/LeakSection.tsx";
import { leakPage } from "./leak/leakData.ts";
import { exponentText, leakSentence } from "./leak/leakSentence.ts";
import { Facts, Page } from "./Page.tsx";
import { PointPanel } from "./PointPanel.tsx";
import { PullMeaning } from "./pull/PullMeaning.tsx";
import { PullSection } from "./pull/PullSection.tsx";
import { pullPage } from "./pull/pullData.ts";
import { pullSentence, ratioText } from "./pull/pullSentence.ts";
import { TestList } from "./TestList.tsx";

/** A skirt's page: its leak and the pulls made with it. */
export function SkirtView({ book, id }: { book: Book; id: string }) {
  const tests = testsOfPart(book, "skirts", id);
  const chosen = useChosen(tests);
  const skirt = findById(book.skirts, id);
  const leak = useMemo(() => leakPage(book, "skirt", id), [book, id]);
  const pull = useMemo(() => pullPage(book, "skirt", id), [book, id]);
  if (!skirt) return null;
  const { name, gap, gapBasis, perimeter, land, area } = skirt.data;
  if (tests.length === 0)
    return (
      <Empty
        title={`What ${name} leaks is computed from its gap alone; no test of it is logged.`}
        action={{ label: "Log a leak test", href: href("bench", "new/leak", { skirt: id }) }}
      >
        <p>A leak test or a pull test with this skirt fills this page.</p>
      </Empty>
    );
  const hasLeak = leak.groups.length > 0;
  const picture = (
    <>
      <Answer sentence={hasLeak ? leakSentence(leak.groups[0]) : pullSentence(pull)}>
        {hasLeak &&
          leak.groups[0].fit &&
          `Its flow goes as pressure to the ${exponentText(leak.groups[0])}. `}
        {hasLeak && pull.ratio && `Pulls come out at ${ratioText(pull)} × the prediction.`}
      </Answer>
      {hasLeak && <LeakSection page={leak} part="skirt" name={name} tests={tests} chosen={chosen} answered />}
      <CalibrationSection book={book} part="skirt" id={id} chosen={chosen} />
      {pull.points.length > 0 && (
        <PullSection
          page={pull}
          name={name}
          tests={tests}
          chosen={chosen}
          answered={!hasLeak}
          compared={isCompared(book, "skirt", id)}
        />
      )}
    </>
  );
  const facts = [
    {
      label: gapBasis === "measured" ? "gap as measured" : "gap as set",
      text: formatQuantity(gap, "length"),
    },
    { label: "lip", text: formatQuantity(perimeter, "length") },
    { label: "land", text: formatQuantity(land, "length") },
    { label: "area inside", text: formatQuantity(area, "area") },
  ];
  const meaning = (
    <>
      <PointPanel test={chosen.test} row={chosen.row} onClose={chosen.close} />
      <section>
        <h2>{name}</h2>
        <Facts facts={facts} />
      </section>
      {hasLeak && <LeakMeaning page={leak} part="skirt" />}
      {pull.points.length > 0 && <PullMeaning page={pull} />}
      <TestList tests={tests} />
      <AsideList tests={tests} onChoose={chosen.choose} />
    </>
  );
  return <Page picture={picture} meaning={meaning} />;
}
