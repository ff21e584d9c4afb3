import { useMemo } from "preact/hooks";
import type { Side } from "../../../shared/book/size/sides.ts";
import type { SizeSpread } from "../../../shared/decide/size/spread.ts";
import { Figure } from "../../charts/Figure.tsx";
import { stackHeight, stackPicture } from "../../charts/stack.ts";
import { Caution } from "../../ui/Caution.tsx";
import { Problem } from "../../ui/Problem.tsx";
import { ShowWorking } from "../../ui/working/ShowWorking.tsx";
import { type Answered, bestOf, foremost, type Sized } from "./answer.ts";
import type { Asked } from "./asked.ts";
import { BestTable } from "./BestTable.tsx";
import { MotorTable } from "./MotorTable.tsx";
import type { Put } from "./question.ts";
import { SeriesSection } from "./series/SeriesSection.tsx";
import type { Settings } from "./settings.ts";
import { panelsOf, sizeTable } from "./sizePlot.ts";
import { pictureSentence, rowWords } from "./sizeWords.ts";
import { spreadSentence } from "./spread/spreadWords.ts";
import { useSpread } from "./spread/useSpread.ts";
import type { Subject } from "./subject.ts";
import { SuitsSection } from "./suits/SuitsSection.tsx";
import { usedFamilies } from "./suits/suits.ts";
import { bestBoard } from "./workings.ts";

interface Props {
  readonly subject: Subject;
  readonly put: Put;
  readonly settings: Settings;
  readonly answered: Answered;
  readonly asked: Asked;
  readonly onAsk: (part: Partial<Asked>) => void;
}

function shownOf(answered: Answered, family: string | null): Sized | null {
  const drawn = answered.families.filter(({ rows }) => rows.length > 0);
  return drawn.find(({ id }) => id === family) ?? foremost(answered) ?? drawn[0] ?? null;
}

function sideOfShown({ sides }: Put, shown: Sized | null): Side | null {
  return sides.find(({ kind }) => kind === shown?.kind) ?? null;
}

/** The picture, the best sizes side by side, and what of the book comes near. */
export function Meaning({ subject, put, settings, answered, asked, onAsk }: Props) {
  const shown = shownOf(answered, asked.family);
  const best = shown && bestOf(shown);
  const side = sideOfShown(put, shown);
  const { spread, problem } = useSpread(subject.book, side, shown, settings.hold);
  const used = useMemo(() => usedFamilies(side, answered), [side, answered]);
  const known = shown && spread && spreadSentence(shown, spread);
  return (
    <>
      <section class="page-main" aria-label="The picture">
        {shown && (
          <SizeFigure answered={answered} shown={shown} spread={spread} build={subject.build.data.name} />
        )}
      </section>
      <section class="page-below" aria-label="What it means">
        {shown && (
          <>
            <h2>The best size of each family</h2>
            <BestTable put={put} answered={answered} shown={shown} onShow={(family) => onAsk({ family })} />
            {best && <ShowWorking of={() => bestBoard(put, answered, shown)} />}
            <p class="size-known">{known}</p>
            {problem && <Problem message={problem} />}
          </>
        )}
        {put.leftOut.map(({ name, why }) => (
          <p key={name} class="small">
            {name} is left out: {why}
          </p>
        ))}
        {shown && <SuitsSection used={used} shown={shown.id} />}
        {shown && side && spread && (
          <SeriesSection book={subject.book} side={side} shown={shown} hold={settings.hold} spread={spread} />
        )}
        {shown && side && best && best.kv !== null && (
          <MotorTable
            subject={subject}
            side={side}
            settings={settings}
            family={shown.id}
            best={{ ...best, kv: best.kv }}
          />
        )}
        <Caution>
          A spinning rotor throws fragments when it bursts: run a new one up behind a screen first, and stay
          out of its plane.
        </Caution>
      </section>
    </>
  );
}

interface FigureProps {
  readonly answered: Answered;
  readonly shown: Sized;
  readonly spread: SizeSpread | null;
  readonly build: string;
}

function SizeFigure({ answered, shown, spread, build }: FigureProps) {
  const panels = panelsOf(answered, shown, spread);
  const words = (key: string) => {
    const row = shown.rows.find(({ diameter }) => key === `${shown.id} ${diameter}`);
    if (row) return rowWords(shown.name, row);
    const family = answered.families.find(({ id }) => key === `best ${id}`);
    const best = family && bestOf(family);
    return family && best ? rowWords(family.name, best) : [];
  };
  return (
    <Figure
      sentence={pictureSentence(answered, shown)}
      picture={stackPicture(panels)}
      height={stackHeight(panels)}
      name={`size ${build}`}
      table={() => sizeTable(answered, shown, spread)}
      reading={{ label: "Sizes", describe: words }}
    >
      <p class="quiet small">
        A ring marks the size that takes least of each family and keeps every limit; hatched is what stops{" "}
        {shown.name}.{spread && " The band holds 90 % of what is not known."}
      </p>
    </Figure>
  );
}
