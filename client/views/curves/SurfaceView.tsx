import { useMemo } from "preact/hooks";
import { type Book, findById } from "../../../shared/book/book.ts";
import { surfaceRoughness } from "../../../shared/book/roughnessBasis.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import { Answer } from "../../ui/Answer.tsx";
import { Empty } from "../../ui/Empty.tsx";
import { Mark } from "../../ui/Mark.tsx";
import { AsideList } from "./AsideList.tsx";
import { testsOfPart } from "./address.ts";
import { CalibrationSection } from "./calibration/CalibrationSection.tsx";
import { isCompared } from "./calibration/calibrationData.ts";
import { useChosen } from "./chosen.ts";
import { FrictionMeaning } from "./friction/FrictionMeaning.tsx";
import { FrictionSection } from "./friction/FrictionSection.tsx";
import { type FrictionGroup, frictionGroups } from "./friction/frictionData.ts";
import { frictionSentence, muText } from "./friction/frictionSentence.ts";
import { LeakMeaning } from "./leak/LeakMeaning.tsx";
import { LeakSection } from "./leak/LeakSection.tsx";
import { leakPage } from "./leak/leakData.ts";
import { leakSentence } from "./leak/leakSentence.ts";
import { Facts, Page } from "./Page.tsx";
import { PointPanel } from "./PointPanel.tsx";
import { PullMeaning } from "./pull/PullMeaning.tsx";
import { PullSection } from "./pull/PullSection.tsx";
import { type PullPage, pullPage } from "./pull/pullData.ts";
import { pullSentence, ratioText } from "./pull/pullSentence.ts";
import { RoughnessSection, roughnessText } from "./RoughnessSection.tsx";
import { TestList } from "./TestList.tsx";

/** A surface's page: what slides on it, what leaks over it, what was pulled off it. */
export function SurfaceView({ book, id }: { book: Book; id: string }) {
  const tests = testsOfPart(book, "surfaces", id);
  const chosen = useChosen(tests);
  const surface = findById(book.surfaces, id);
  const friction = useMemo(() => frictionGroups(book, id), [book, id]);
  const leak = useMemo(() => leakPage(book, "surface", id), [book, id]);
  const pull = useMemo(() => pullPage(book, "surface", id), [book, id]);
  if (!surface) return null;
  const { name } = surface.data;
  const roughness = surfaceRoughness(book, surface);
  if (tests.length === 0)
    return (
      <Empty
        title={`No test on ${name} is logged yet.`}
        action={{ label: "Log a friction test", href: href("bench", "new/friction", { surface: id }) }}
      >
        <p>Tilt the vehicle on it, fan off, until it slides; leak and pull tests on it show here as well.</p>
      </Empty>
    );
  const sentences = [
    ...friction.slice(0, 1).map((group) => frictionSentence(group, name)),
    ...leak.groups.slice(0, 1).map(leakSentence),
    ...(pull.points.length > 0 ? [pullSentence(pull)] : []),
  ];
  const picture = (
    <>
      <Answer sentence={sentences[0]}>{figuresOf(friction.slice(1), pull)}</Answer>
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
      <CalibrationSection book={book} part="surface" id={id} chosen={chosen} />
      {pull.points.length > 0 && (
        <PullSection
          page={pull}
          name={name}
          tests={tests}
          chosen={chosen}
          answered={friction.length + leak.groups.length === 0}
          compared={isCompared(book, "surface", id)}
        />
      )}
    </>
  );
  const meaning = (
    <>
      <PointPanel test={chosen.test} row={chosen.row} onClose={chosen.close} />
      <section>
        <h2>{name}</h2>
        <Facts
          facts={[
            { label: "roughness allowance", text: roughnessText(roughness) },
            {
              label: "friction of the wheels",
              text: <WheelFriction groups={friction} stated={surface.data.wheelFriction} />,
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
  return <Page picture={picture} meaning={meaning} />;
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
