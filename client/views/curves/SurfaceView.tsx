import { type Bench, findById } from "../../../shared/book/bench.ts";
import { formatFixed, formatQuantity } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import { Answer } from "../../ui/Answer.tsx";
import { Empty } from "../../ui/Empty.tsx";
import { Mark } from "../../ui/Mark.tsx";
import { AsideList } from "./AsideList.tsx";
import { testsOfPart } from "./address.ts";
import { useChosen } from "./chosen.ts";
import { FrictionSection } from "./friction/FrictionSection.tsx";
import { type FrictionGroup, frictionGroups } from "./friction/frictionData.ts";
import { frictionSentence, muText } from "./friction/frictionSentence.ts";
import { LeakSection } from "./leak/LeakSection.tsx";
import { leakPage } from "./leak/leakData.ts";
import { leakSentence } from "./leak/leakSentence.ts";
import { Facts, Page } from "./Page.tsx";
import { PointPanel } from "./PointPanel.tsx";
import { PullSection } from "./pull/PullSection.tsx";
import { pullPage } from "./pull/pullData.ts";
import { pullSentence } from "./pull/pullSentence.ts";
import { TestList } from "./TestList.tsx";

/** A surface's page: what slides on it, what leaks over it, what was pulled off it. */
export function SurfaceView({ bench, id }: { bench: Bench; id: string }) {
  const tests = testsOfPart(bench, "surfaces", id);
  const chosen = useChosen(tests);
  const surface = findById(bench.surfaces, id);
  if (!surface) return null;
  const { name, roughness } = surface.data;
  if (tests.length === 0)
    return (
      <Empty
        title={`No test on ${name} is logged yet.`}
        action={{ label: "Log a friction test", href: href("bench", "new/friction", { surface: id }) }}
      >
        <p>Tilt the vehicle on it, fan off, until it slides; leak and pull tests on it show here as well.</p>
      </Empty>
    );
  const friction = frictionGroups(bench, id);
  const leak = leakPage(bench, "surface", id);
  const pull = pullPage(bench, "surface", id);
  const sentences = [
    ...friction.slice(0, 1).map((group) => frictionSentence(group, name)),
    ...leak.groups.slice(0, 1).map(leakSentence),
    ...(pull.points.length > 0 ? [pullSentence(pull)] : []),
  ];
  const picture = (
    <>
      <Answer sentence={sentences[0]}>{sentences.length > 1 ? sentences[1] : null}</Answer>
      {friction.map((group) => (
        <FrictionSection key={group.key} group={group} surface={name} tests={tests} chosen={chosen} />
      ))}
      {leak.groups.length > 0 && (
        <LeakSection page={leak} part="surface" name={name} tests={tests} chosen={chosen} />
      )}
      {pull.points.length > 0 && <PullSection page={pull} name={name} tests={tests} chosen={chosen} />}
    </>
  );
  const meaning = (
    <>
      <section>
        <h2>{name}</h2>
        <Facts
          facts={[
            { label: "roughness allowance", text: formatQuantity(roughness, "length") },
            {
              label: "friction of the wheels",
              text: <WheelFriction groups={friction} stated={surface.data.wheelFriction} />,
            },
          ]}
        />
      </section>
      <PointPanel test={chosen.test} row={chosen.row} />
      <TestList tests={tests} />
      <AsideList tests={tests} onChoose={chosen.choose} />
    </>
  );
  return <Page picture={picture} meaning={meaning} />;
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
