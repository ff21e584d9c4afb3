import type { BuildMarkWord } from "../../shared/book/marks.ts";

export type MarkWord = BuildMarkWord | "at minimum voltage" | "at tested speed" | "friction not known";

/** A small outlined word beside a figure that does not rest on a measurement alone. */
export function Mark({ word, title }: { word: MarkWord; title?: string }) {
  return (
    <span class="mark" title={title}>
      {word}
    </span>
  );
}
