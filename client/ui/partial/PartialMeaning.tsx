import type { Book } from "../../../shared/book/resolve.ts";
import type { Note } from "../../../shared/physics/note.ts";
import type { FrictionNeeded, PartialHold } from "../../../shared/physics/partial/partialAnswer.ts";
import type { Outcome } from "../../state/outcome.ts";
import { Caution } from "../Caution.tsx";
import { RestsOn } from "../RestsOn.tsx";
import { VerdictMarks } from "../VerdictMarks.tsx";
import { HoldsTable } from "./HoldsTable.tsx";
import type { Known } from "./known.ts";
import { circumstanceText } from "./partialWords.ts";
import { UnknownMarks } from "./UnknownMarks.tsx";

/** A pull to tell of: what it holds, and under which circumstance. */
export interface Told {
  readonly holds: readonly PartialHold[];
  readonly caption: string;
  /** friction that does it from floor to ceiling as well */
  readonly everywhere?: FrictionNeeded | null;
}

export interface PartialMeaningProps {
  readonly book: Book;
  readonly outcome: Outcome;
  readonly known: Known;
  /** that which answers first */
  readonly told: readonly Told[];
  readonly warnings: readonly Note[];
}

/** @returns every state that is known, the leading one first */
export function toldOf(known: Known, anywhere = false): Told[] {
  return known.answer.moments.toReversed().map((at) => ({
    holds: at.holds,
    caption: circumstanceText(known, at),
    everywhere: anywhere ? at.everywhere : null,
  }));
}

/** What the known figures hold, on what they rest, what is odd about them, and the cautions. */
export function PartialMeaning({ book, outcome, known, told, warnings }: PartialMeaningProps) {
  const [first, ...others] = told;
  const { resolved } = outcome;
  const notes = [...warnings, ...(resolved?.notes ?? []), ...(resolved?.pack?.notes ?? [])];
  return (
    <>
      {told.length > 0 && (
        <h2>
          Holds?
          <UnknownMarks known={known} />
          <VerdictMarks book={book} outcome={outcome} />
        </h2>
      )}
      {first && <HoldsTable known={known} {...first} />}
      {others.length > 0 && (
        <details class="partial-others">
          <summary>{known.coupled ? "At the start" : "At the other tested speeds"}</summary>
          {others.map((each) => (
            <HoldsTable key={each.caption} known={known} {...each} />
          ))}
        </details>
      )}
      <RestsOn book={book} outcome={outcome} />
      {notes.length > 0 && (
        <>
          <h2>Mind</h2>
          <ul class="notes">
            {notes.map((note) => (
              <li key={note.code + note.message}>{note.message}</li>
            ))}
          </ul>
        </>
      )}
      <Caution>
        A vehicle on a wall or ceiling falls when the charge ends: tether it, keep people, pets and traffic
        from under it.
      </Caution>
      <Caution>Spinning rotors throw fragments: guard, goggles, stay out of the rotor's plane.</Caution>
    </>
  );
}
