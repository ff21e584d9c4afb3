import { useState } from "preact/hooks";
import { bookOfBuild } from "../../../../shared/book/bookOfBuild.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import { isTyped } from "../../../../shared/book/size/need/bookOfNeed.ts";
import type { Print, SeriesAsked } from "../../../../shared/book/size/printSeries.ts";
import type { Side } from "../../../../shared/book/size/sides.ts";
import type { WantedHold } from "../../../../shared/decide/size/input.ts";
import type { SizeSpread } from "../../../../shared/decide/size/spread.ts";
import { percentText } from "../../../../shared/decide/verdict/figures.ts";
import { href } from "../../../app/router.ts";
import { useTask } from "../../../threads/useTask.ts";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { Problem } from "../../../ui/Problem.tsx";
import { ScrollTable } from "../../../ui/ScrollTable.tsx";
import { useSaid } from "../../../ui/useSaid.ts";
import type { Sized } from "../answer.ts";
import { sizeText } from "../sizeWords.ts";
import type { Reply } from "./answer.ts";
import { seriesSentence, throttlesText } from "./seriesWords.ts";

const FAILED: Reply = {
  problem: "What to print next could not be worked out in this browser; reload the page.",
};

export interface SeriesProps {
  readonly book: Book;
  readonly side: Side;
  readonly shown: Sized;
  readonly hold: WantedHold;
  readonly spread: SizeSpread;
}

function questionOf({ book, side, shown, hold, spread: { best } }: SeriesProps): SeriesAsked | null {
  if (!best) return null;
  const { kind, build, numbers } = side;
  return {
    book: bookOfBuild(book, { ...build, rotor: shown.id }),
    side: { kind, build, numbers },
    family: shown.id,
    hold,
    rows: shown.rows,
    best,
  };
}

/** Which sizes to print and test next; it takes some seconds, so it is worked out when one asks. */
export function SeriesSection(props: SeriesProps) {
  const { side, shown, spread } = props;
  const [question, setQuestion] = useState<{ of: SizeSpread; asked: SeriesAsked } | null>(null);
  const asked = question?.of === spread ? question.asked : null;
  const { reply, asked: answered, busy } = useTask("printSeries", asked, FAILED);
  const own = asked !== null && answered === asked ? reply : null;
  useSaid(own && "answered" in own ? seriesSentence(shown.name, own.answered) : null, "said");
  const ask = () => {
    const next = questionOf(props);
    if (next) setQuestion({ of: spread, asked: next });
  };
  return (
    <section aria-label="What to print next">
      <h2>What to print next</h2>
      {!own && (
        <BusyButton type="button" busy={asked !== null && busy} onClick={ask}>
          Find the sizes that would tell most
        </BusyButton>
      )}
      <div>
        {own && "problem" in own && <Problem message={own.problem} />}
        {own && "answered" in own && (
          <>
            <p>{seriesSentence(shown.name, own.answered)}</p>
            {own.answered.prints.length > 0 && (
              <Prints prints={own.answered.prints} shown={shown} side={side} />
            )}
          </>
        )}
      </div>
    </section>
  );
}

/** The test that each print is for. */
const TESTS = {
  ducted: {
    what: "A curve test each, nine readings from blocked to open at both throttles, with the build\u2019s own motor: the speed that the duty asks for, and three quarters of it.",
    form: "new/curve",
    log: "Log a curve test",
  },
  propeller: {
    what: "A thrust test each, nine readings between the two throttles, with the build\u2019s own motor: from the speed that the duty asks for down to half of it.",
    form: "new/thrust",
    log: "Log a thrust test",
  },
} as const;

interface PrintsProps extends Pick<SeriesProps, "shown" | "side"> {
  readonly prints: readonly Print[];
}

function Prints({ prints, shown, side }: PrintsProps) {
  const parts = Object.entries({ rotor: shown.id, motor: side.build.motor }).filter(([, id]) => !isTyped(id));
  return (
    <>
      <ScrollTable label="What to print next">
        <table class="size-motors">
          <thead>
            <tr>
              <th scope="col">Size</th>
              <th scope="col">Would take off</th>
              <th scope="col">Throttles of the test</th>
              <th scope="col">Printed</th>
            </tr>
          </thead>
          <tbody>
            {prints.map((print) => (
              <tr key={print.diameter}>
                <th scope="row">{sizeText(print.diameter)}</th>
                <td>{percentText(print.cut)}</td>
                <td>{throttlesText(side.kind, print)}</td>
                <td>{print.isTested ? "tested before" : "not tested yet"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollTable>
      <p class="quiet small">
        {TESTS[side.kind].what} If they read what is expected.{" "}
        <a href={href("bench", TESTS[side.kind].form, Object.fromEntries(parts))}>{TESTS[side.kind].log}</a>
      </p>
    </>
  );
}
