import type { Outcome } from "../state/outcome.ts";

/** What is odd about a build or its prediction. */
export function Warnings({ outcome }: { outcome: Outcome }) {
  const notes = [...(outcome.prediction?.warnings ?? []), ...(outcome.resolved?.notes ?? [])];
  if (notes.length === 0) return null;
  return (
    <>
      <h2>Mind</h2>
      <ul class="notes">
        {notes.map((note) => (
          <li key={note.code + note.message}>{note.message}</li>
        ))}
      </ul>
    </>
  );
}
