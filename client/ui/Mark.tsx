import { MARK_MEANINGS } from "../../shared/book/glossary.ts";
import type { BuildMarkWord } from "../../shared/book/marks.ts";
import { Explained } from "./explain/Explained.tsx";

/** Marks of a build that is not known whole, by what its figures have to do without. */
const OF_A_PART = {
  "at minimum voltage": "The rotor's speed is not known yet; this is where the voltage is least.",
  "at tested speed": "The rotor turns as fast as in its tests.",
  "friction not known": "Whether it slides can't be said before a friction test.",
} as const;

const MEANINGS = { ...MARK_MEANINGS, ...OF_A_PART } as const;

export type MarkWord = BuildMarkWord | keyof typeof OF_A_PART;

/** A small outlined word beside a figure that does not rest on a measurement alone; it explains itself. */
export function Mark({ word, title }: { word: MarkWord; title?: string }) {
  const what = title
    ? `${title.charAt(0).toUpperCase()}${title.slice(1)}${/[.?!]$/.test(title) ? "" : "."} `
    : "";
  return (
    <Explained word={word} meaning={what + MEANINGS[word]} class="mark">
      {word}
    </Explained>
  );
}
