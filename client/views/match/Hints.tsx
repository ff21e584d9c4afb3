import { useState } from "preact/hooks";
import { isDemo } from "../../state/book.ts";
import { tried } from "../../state/browserStore.ts";

const KEY = "gripcurve hints of Match seen";

const HINTS = [
  "Read the band at the top first: what it comes to, the figure that decides, and what to do about it.",
  "Drag the gap under What if: verdict, chart and margins follow. Nothing is stored until you save it.",
  "A small outlined word, such as estimated, says what a figure is based on: point at it or tap it.",
] as const;

/** How to read this page, in three lines, for whoever opens the demo; gone for good once it was read. */
export function Hints() {
  const [seen, setSeen] = useState(() => tried(() => localStorage.getItem(KEY), null) !== null);
  if (seen || !isDemo.value) return null;
  const dismiss = () => {
    tried(() => localStorage.setItem(KEY, "seen"), undefined);
    setSeen(true);
  };
  return (
    <aside class="match-hints" aria-label="How to read this page">
      <ol>
        {HINTS.map((hint) => (
          <li key={hint}>{hint}</li>
        ))}
      </ol>
      <button type="button" class="plain" onClick={dismiss}>
        Dismiss these hints
      </button>
    </aside>
  );
}
