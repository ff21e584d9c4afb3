import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { EFFICIENCY_ABOVE_ONE } from "../../../../shared/physics/point/efficiencyNotes.ts";
import { href } from "../../../app/router.ts";
import { Answer } from "../../../ui/Answer.tsx";
import { counted } from "../../../ui/count.ts";
import { Empty } from "../../../ui/Empty.tsx";
import { Mark } from "../../../ui/Mark.tsx";
import { useChosen } from "../chosen.ts";
import { percent } from "../curveWords.ts";
import { Page } from "../Page.tsx";
import { bandsFor, sureness } from "./bands.ts";
import { familyRms } from "./contributions.ts";
import { type RotorFamily, readingsInUse, rotorFamily } from "./family.ts";
import { RotorCharts } from "./RotorCharts.tsx";
import { RotorControls } from "./RotorControls.tsx";
import { RotorMeaning } from "./RotorMeaning.tsx";
import { rotorSentence } from "./sentence.ts";
import { unitsOf } from "./shown.ts";
import { shownOf, useShown } from "./shownState.ts";

/** A rotor family's page: readings, curve, bands, residuals, in coefficients and at any speed. */
export function RotorView({ book, id }: { book: Book; id: string }) {
  const family = useMemo(() => rotorFamily(book, id), [book, id]);
  const bandAt = useMemo(() => (family ? bandsFor(family) : () => null), [family]);
  const [state, change] = useShown(family);
  const chosen = useChosen(family?.tests ?? []);
  if (!family) return null;
  if (family.answer.basis === "missing" && family.tests.length === 0) return <Untested family={family} />;
  const shown = shownOf(state);
  return (
    <Page
      picture={
        <>
          <Answer sentence={rotorSentence(family, sureness(family, bandAt))}>
            <Figures
              family={family}
              sizeFactor={unitsOf(family, shown).sizeFactor}
              scaled={isScaled(family, state)}
            />
          </Answer>
          {family.answer.basis === "missing" && <p class="near">{family.answer.missing.message}</p>}
          <RotorControls family={family} state={state} change={change} />
          <RotorCharts family={family} shown={shown} bandAt={bandAt} chosen={chosen} />
        </>
      }
      meaning={<RotorMeaning book={book} family={family} shown={shown} bandAt={bandAt} chosen={chosen} />}
    />
  );
}

const SAME_SIZE = 1e-3;

function isScaled(family: RotorFamily, state: { readonly as: string; readonly diameter: number }): boolean {
  if (state.as !== "pressure" || family.readings.length === 0) return false;
  return !family.readings.some((reading) => Math.abs(reading.diameter / state.diameter - 1) < SAME_SIZE);
}

function countText(used: number, aside: number, fitted: boolean): string {
  const left = aside > 0 ? `, ${aside} set aside` : "";
  return fitted
    ? `${counted(used, "reading")} in the fit${left}.`
    : `${counted(used, "reading")}${left}, no curve yet.`;
}

interface FiguresProps {
  readonly family: RotorFamily;
  readonly scaled: boolean;
  readonly sizeFactor: number;
}

function Figures({ family, scaled, sizeFactor }: FiguresProps) {
  const used = readingsInUse(family).length;
  const rms = familyRms(family);
  const aside = family.readings.length - used;
  const { basis } = family.answer;
  const impossible = family.fit?.warnings.find(({ code }) => code === EFFICIENCY_ABOVE_ONE);
  return (
    <>
      {used + aside > 0 && `${countText(used, aside, family.fit !== null)} `}
      {rms !== null && `They scatter about it by ${percent(rms)} of blocked pressure. `}
      {family.fit?.stall && "It rises with the flow over a part: the rotor can stall there. "}
      {impossible && <Mark word="efficiency above 1" title={impossible.message} />}
      {basis === "two-point" && <Mark word="two-point" />}
      {basis === "estimated" && <Mark word="estimated" />}
      {scaled && (
        <Mark
          word="scaled"
          title={`This size was not tested; its pressure is corrected for size by ${percent(sizeFactor - 1)}.`}
        />
      )}
    </>
  );
}

function Untested({ family }: { family: RotorFamily }) {
  const { name } = family.rotor.data;
  return (
    <Empty
      title={`The curve of ${name} is not known yet.`}
      action={{ label: "Log a curve test", href: href("bench", "new/curve", { rotor: family.rotor.id }) }}
    >
      <p>
        A curve test fills this page: pressure readings from blocked to open, the flow known or taken from a
        drilled plate. Two more readings than you think you need.
      </p>
    </Empty>
  );
}
