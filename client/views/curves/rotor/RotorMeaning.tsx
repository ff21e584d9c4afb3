import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import { decimalsOf, unitOf } from "../../../../shared/units/showing.ts";
import { href } from "../../../app/router.ts";
import { counted } from "../../../ui/count.ts";
import { estimateSentence } from "../../../ui/estimateWords.ts";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import { AsideList } from "../AsideList.tsx";
import type { Chosen } from "../chosen.ts";
import { capital, percent } from "../curveWords.ts";
import { rotorFitBoard } from "../fitWorkings.ts";
import { type Fact, Facts, Notes } from "../Page.tsx";
import { PointPanel } from "../PointPanel.tsx";
import { testName } from "../typed.ts";
import { plainResidualSd } from "./bands.ts";
import { contributions } from "./contributions.ts";
import type { RotorFamily } from "./family.ts";
import { speedText } from "./groupPlot.ts";
import { missingInUnits, nextReadings } from "./nextReadings.ts";
import { offsetSentences } from "./offsets.ts";
import type { BandAt } from "./plots.ts";
import { readingFacts } from "./readingFigures.tsx";
import { missingSentence } from "./sentence.ts";
import { type Shown, unitsOf } from "./shown.ts";

const R_SQUARED_DECIMALS = 4;

function factsOf(family: RotorFamily, shown: Shown, bandAt: BandAt): Fact[] {
  const { fit } = family;
  if (!fit) return [];
  const units = unitsOf(family, shown);
  const flows = shown.as === "pressure";
  const range = [fit.phiMin, fit.phiMax].map((phi) =>
    formatFixed(units.x(phi), flows ? decimalsOf("flow", 2) : 3),
  );
  const blocked = bandAt(0);
  const psi0 = fit.psi[0];
  const leaveOneOut = fit.leaveOneOutSd;
  const residualSd = plainResidualSd(family);
  return [
    { label: "degree", text: fit.degree },
    { label: "fitted from", text: `${range[0]} to ${range[1]}${flows ? `\u202f${unitOf("flow")}` : " (φ)"}` },
    {
      label: "ψ with no flow",
      text: `${formatFixed(psi0, 3)}${blocked ? ` ± ${formatFixed(blocked.mean, 3)}` : ""}`,
    },
    ...(family.phiFree === null
      ? []
      : [{ label: "φ with no pressure", text: formatFixed(family.phiFree, 3) }]),
    { label: "R²", text: fit.dof > 0 ? formatFixed(fit.rSquared, R_SQUARED_DECIMALS) : "–" },
    { label: "residual sd", text: residualSd === null ? "–" : `${percent(residualSd)} of blocked` },
    {
      label: "leave-one-out",
      text: leaveOneOut === null ? "–" : `${percent(leaveOneOut / psi0)} of blocked`,
    },
    { label: "AICc", text: fit.aicc === null ? "–" : formatFixed(fit.aicc, 1) },
    { label: "pressure rises with flow", text: fit.stall ? "over a part: stall" : "nowhere" },
  ];
}

export interface RotorMeaningProps {
  readonly book: Book;
  readonly family: RotorFamily;
  readonly shown: Shown;
  readonly bandAt: BandAt;
  readonly chosen: Chosen;
}

/** What the fit says: figures, what to measure next, what each test brought, the reading that was chosen. */
export function RotorMeaning({ book, family, shown, bandAt, chosen }: RotorMeaningProps) {
  const { fit } = family;
  const next = useMemo(() => nextReadings(family), [family]);
  const judged = fit !== null && bandAt(fit.phiMin) !== null;
  return (
    <>
      {family.readings.length > 0 && (
        <PointPanel
          test={chosen.test}
          row={chosen.row}
          onClose={chosen.close}
          derived={readingFacts(book, family, chosen.key)}
        />
      )}
      {!fit && <FillIt family={family} />}
      {fit && (
        <>
          <section>
            <h2>What is missing</h2>
            <p>
              {judged
                ? missingSentence(missingInUnits(family, shown, next))
                : "Repeat readings, and take some at more flows: how sure the curve is cannot be told yet."}
            </p>
            <Notes notes={fit.warnings.filter((note) => note.code !== "outliers")} />
          </section>
          <section>
            <h2>The fit</h2>
            <Facts facts={factsOf(family, shown, bandAt)} />
            <ShowWorking of={() => rotorFitBoard(family)} />
            <p class="quiet small">{capital(fit.reason).replace(/-(?=\d)/g, "−")}.</p>
            {family.estimateOff && (
              <p class="small">{estimateSentence(family.rotor.data.name, family.estimateOff)}</p>
            )}
          </section>
          <Outliers family={family} chosen={chosen} />
        </>
      )}
      {family.tests.length > 0 && <Contributions family={family} />}
      <AsideList tests={family.tests} onChoose={chosen.choose} />
    </>
  );
}

/** What turns an estimate, or no curve at all, into a curve. */
function FillIt({ family }: { family: RotorFamily }) {
  return (
    <section>
      <h2>What is missing</h2>
      <p>
        A curve test: pressure readings from blocked to open, the flow known or taken from a drilled plate.
      </p>
      <a class="button" href={href("bench", "new/curve", { rotor: family.rotor.id })}>
        Log a curve test
      </a>
    </section>
  );
}

function Outliers({ family, chosen }: { family: RotorFamily; chosen: Chosen }) {
  const outliers = family.readings.filter((reading) => reading.outlier);
  if (outliers.length === 0) return null;
  return (
    <section>
      <h2>Far off the curve</h2>
      <p class="quiet small">Each judged by how precise its instruments make it.</p>
      <ul class="curves-list">
        {outliers.map((reading) => (
          <li key={reading.key}>
            <button type="button" class="plain" onClick={() => chosen.choose(reading.key)}>
              {testName(family.tests[reading.test])}, row {reading.row + 1}
            </button>
            <span class="quiet">
              {" "}
              {reading.residual === null ? "" : `${percent(reading.residual)} of blocked pressure`}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Contributions({ family }: { family: RotorFamily }) {
  const said = useMemo(() => offsetSentences(family), [family]);
  const brought = useMemo(() => contributions(family), [family]);
  return (
    <section>
      <h2>What each test brought</h2>
      <ul class="curves-list">
        {brought.map((each) => {
          const test = family.tests[each.test];
          return (
            <li key={test.id}>
              <a href={href("bench", test.id)}>{testName(test)}</a>
              <div class="quiet small">
                {counted(each.used, "reading")} at {formatQuantity(each.diameter, "length")}
                {each.groups.length > 0 && `, ${each.groups.map(speedText).join(", ")} ${unitOf("speed")}`}
                {each.share !== null && `; ${percent(each.share)} of what fixes the curve`}
                {each.rms !== null && `; off by ${percent(each.rms)} rms`}
              </div>
              {said.has(test.id) && <div class="small">{said.get(test.id)}</div>}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
