import { signal } from "@preact/signals";
import type { Board, Working } from "../../../shared/physics/working.ts";

/** A figure's working, and what it leads down to. */
export interface Shown {
  readonly working: Working;
  readonly board: Board;
}

/** What works a board out, fetched with the first figure that is pressed where a view needs it for nothing else. */
export type Boards = () => Board | Promise<Board>;

/** The working that is open over the page; null: none. */
export const shownWorking = signal<Shown | null>(null);
