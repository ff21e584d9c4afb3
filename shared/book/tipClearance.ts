import type { Rotor } from "../model/parts/rotor.ts";
import { clearanceNotes, type TipClearance } from "../physics/fanlaws/notes.ts";
import type { Note } from "../physics/note.ts";
import { isSameSize } from "./testedSizes.ts";

/** Null where that size isn't listed, or its clearance wasn't measured. */
function clearanceAt({ sizes }: Pick<Rotor, "sizes">, diameter: number): TipClearance | null {
  const clearance = sizes.find((size) => isSameSize(size.diameter, diameter))?.tipClearance;
  return clearance === undefined ? null : { clearance, diameter };
}

/**
 * What a tip clearance that was not scaled along does to a curve tested at another size.
 *
 * @param rotor - the family, with the clearance of each of its sizes [m]
 * @param diameter - of the rotor in the build [m]
 * @param scaledFrom - tested size that its curve is scaled from [m]; null where its own size was tested
 * @returns the note; none where a clearance isn't known
 */
export function tipClearanceNotes(
  rotor: Pick<Rotor, "sizes"> | null,
  diameter: number,
  scaledFrom: number | null,
): Note[] {
  if (!rotor || scaledFrom === null) return [];
  const tested = clearanceAt(rotor, scaledFrom);
  const used = clearanceAt(rotor, diameter);
  return tested && used ? clearanceNotes(tested, used) : [];
}
