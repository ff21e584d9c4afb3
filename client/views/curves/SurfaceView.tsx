import { useMemo } from "preact/hooks";
import { type Book, findById } from "../../../shared/book/book.ts";
import { surfaceRoughness } from "../../../shared/book/roughnessBasis.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import { Answer } from "../../ui/Answer.tsx";
import { Empty } from "../../ui/Empty.tsx";
import { Mark } from "../../ui/Mark.tsx";
import { AsideList } from "./AsideList.tsx";
import { testsOfPart } from "./address.ts";
import { CalibrationSection } from "./calibration/CalibrationSection.tsx";
import { isCompared } from "./calibration/calibrationData.ts";
import { type Chosen, useChosen } from "./chosen.ts";
import { FrictionMeaning } from "./friction/FrictionMeaning.tsx";
import { FrictionSection } from "./friction/FrictionSection.tsx";
import { type FrictionGroup, frictionGroups } from "./friction/frictionData.ts";
import { frictionSentence, muText } from "./friction/frictionSentence.ts";
import { LeakMeaning } from "./leak/LeakMeaning.tsx";
import { LeakSection } from "./leak/LeakSection.tsx";
import { type LeakPage, leakPage } from "./leak/leakData.ts";
import { leakSentence } from "./leak/leakSentence.ts";
import { Facts, Page } from "./Page.tsx";
import { PointPanel } from "./PointPanel.tsx";
import { PullMeaning } from "./pull/PullMeaning.tsx";
import { PullSection } from "./pull/PullSection.tsx";
import { type PullPage, pullPage } from "./pull/pullData.ts";
import { pullSentence, ratioText } from "./pull/pullSentence.ts";
import { Allowance, RoughnessSection } from "./RoughnessSection.tsx";
import { TestList } from "./TestList.tsx";

/** What the tests on a surface say. */
interface OfSurface {
  readonly book: Book;
  readonly surface: StoredOf<"surfaces">;
  readonly tests: readonly StoredOf<"tests">[];
  readonly chosen: Chosen;
  readonly friction: readonly FrictionGroup[];
  readonly leak: LeakPage;
  readonly pull: PullPage;
}

/** A surface's page: what slides on it, what leaks over it, what was pulled off it. */
export function SurfaceView({ book, id }: { book: Book; id: string }) {
  const tests = testsOfPart(book, "surfaces", id);
  const chosen = useChosen(tests);
  const surface = findById(book.surfaces, id);
  const friction = useMemo(() => frictionGroups(book, id), [book, id]);
  const leak = useMemo(() => leakPage(book, "surface", id), [book, id]);
  const pull = useMemo(() => pullPage(book, "surface", id), [book, id]);
  if (!surface) return null;
  if (tests.length === 0)
    return (
      <Empty
        title={`No test on ${surface.data.name} is logged yet.`}
        action={{ label: "Log a friction test", href: href("bench", "new/friction", { surface: id }) }}
      >
        <p>Tilt the vehicle on it, fan off, until it slides; leak and pull tests on it show here as well.</p>
      </Empty>
    );
  const ofSurface = { book, surface, tests, chosen, friction, leak, pull };
  return <Page picture={<Picture {...ofSurface} />} meaning={<Meaning {...ofSurface} />} />;
}

/** The first of what the tests say, in a sentence. */
function firstSentence({ surface, friction, leak, pull }: OfSurface): string {
  if (friction.length > 0) return frictionSentence(friction[0], surface.data.name);
  if (leak.groups.length > 0) return leakSentence(leak.groups[0]);
  return pullSentence(pull);
}

function Picture(ofSurface: OfSurface) {
  const { book, surface, tests, chosen, friction, leak, pull } = ofSurface;
  const { name } = surface.data;
  return (
    <>
      <Answer sentence={firstSentence(ofSurface)}>{figuresOf(friction.slice(1), pull)}</Answer>
      {friction.map((group, i) => (
        <FrictionSection
          key={group.key}
          group={group}
          surface={name}
          tests={tests}
          chosen={chosen}
          answered={i === 0}
        />
      ))}
      {leak.groups.length > 0 && (
        <LeakSection
          page={leak}
          part="surface"
          name={name}
          tests={tests}
          chosen={chosen}
          answered={friction.length === 0}
        />
      )}
      <CalibrationSection book={book} part="surface" id={surface.id} chosen={chosen} />
      {pull.points.length > 0 && (
        <PullSection
          page={pull}
          name={name}
          tests={tests}
          chosen={chosen}
          answered={friction.length + leak.groups.length === 0}
          compared={isCompared(book, "surface", surface.id)}
        />
      )}
    </>
  );
}

function Meaning({ book, surface, tests, chosen, friction, leak, pull }: OfSurface) {
  const { name, wheelFriction } = surface.data;
  const roughness = surfaceRoughness(book, surface);
  return (
    <>
      <PointPanel test={chosen.test} row={chosen.row} onClose={chosen.close} />
      <section>
        <h2>{name}</h2>
        <Facts
          facts={[
            { label: "roughness allowance", text: <Allowance roughness={roughness} /> },
            {
              label: "friction of the wheels",
              text: <WheelFriction groups={friction} stated={wheelFriction} />,
            },
          ]}
        />
      </section>
      <RoughnessSection roughness={roughness} surface={surface} />
      {friction.map((group) => (
        <FrictionMeaning key={group.key} group={group} tests={tests} />
      ))}
      {leak.groups.length > 0 && <LeakMeaning page={leak} part="surface" />}
      {pull.points.length > 0 && <PullMeaning page={pull} />}
      <TestList tests={tests} />
      <AsideList tests={tests} onChoose={chosen.choose} />
    </>
  );
}

function figuresOf(others: readonly FrictionGroup[], pull: PullPage): string {
  const said = others.flatMap(({ fit, title }) => (fit ? [`${title}: μ = ${muText(fit)}.`] : []));
  if (pull.ratio) said.push(`Pulls come out at ${ratioText(pull)} × the prediction.`);
  return said.join(" ");
}

function WheelFriction({ groups, stated }: { groups: readonly FrictionGroup[]; stated: number | undefined }) {
  const fit = groups.find((group) => group.key === "wheels")?.fit;
  if (fit) return <>{muText(fit)}</>;
  if (stated === undefined) return <>not known</>;
  return (
    <>
      {formatFixed(stated, 2)} <Mark word="stated" />
    </>
  );
}
