import type { Unknown } from "../../../shared/book/resolve.ts";
import { Mark, type MarkWord } from "../Mark.tsx";
import type { Known } from "./known.ts";
import { minimumText } from "./partialWords.ts";

interface UnknownMark {
  readonly word: MarkWord;
  readonly title: string;
}

const GRIP = "friction not known";

/** @returns the marks that every figure of such a build carries */
export function unknownMarks({
  unknown,
  cellMinimum,
}: Pick<Known, "unknown" | "cellMinimum">): UnknownMark[] {
  const minimum = cellMinimum === null ? "" : ` of ${minimumText(cellMinimum)}`;
  const marks: Readonly<Record<Unknown, UnknownMark | null>> = {
    friction: {
      word: GRIP,
      title: "how the wheels grip was never measured: no verdict on sliding or climbing",
    },
    charge:
      cellMinimum === null
        ? null
        : {
            word: "at minimum voltage",
            title: `cells at their minimum${minimum} under load, the least there is while it runs`,
          },
    speed: {
      word: "at tested speed",
      title: "the rotor turned as fast as in its tests; what the motor makes of it isn't known",
    },
  };
  return unknown.flatMap((each) => marks[each] ?? []);
}

interface UnknownMarksProps {
  readonly known: Known;
  /** the figures beside it hang on no friction */
  readonly gripless?: boolean;
}

/** Beside a heading or an answer: what its figures have to do without. */
export function UnknownMarks({ known, gripless = false }: UnknownMarksProps) {
  const marks = unknownMarks(known).filter(({ word }) => !gripless || word !== GRIP);
  return (
    <span class="verdict-marks">
      {marks.map(({ word, title }) => (
        <span key={word}>
          {" "}
          <Mark word={word} title={title} />
        </span>
      ))}
    </span>
  );
}
