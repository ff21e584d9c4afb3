import type { Picture } from "./picture.ts";

export interface Overlay {
  readonly id: string;
  readonly name: string;
  /** "A", "B": stands in the ring and in the table */
  readonly letter: string;
  readonly dash: string;
  readonly picture: Picture;
}

/** Line styles of laid-over builds, each known without its colour. */
export const OVERLAY_DASHES = [
  "2 3",
  "12 3 2 3",
  "6 3",
  "14 4 2 4 2 4",
  "1 5",
  "18 6",
  "8 2 8 2 2 2",
] as const;
