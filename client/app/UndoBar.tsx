import { useEffect, useState } from "preact/hooks";
import { stacks } from "../state/undo/stack.ts";
import { nameOfStep, redo, undo } from "../state/undo/undo.ts";
import { keepFocus } from "../ui/keepFocus.ts";
import { useSaid } from "../ui/useSaid.ts";

/** Where the keys are the browser's own: it undoes what is typed. */
const isTyped = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest("input, textarea, select, [contenteditable]") !== null;

/** @returns what the keys ask for: Ctrl+Z, Ctrl+Shift+Z or Ctrl+Y, with the command key likewise; null for any other */
function asked(event: KeyboardEvent): typeof undo | null {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyped(event.target)) return null;
  const key = event.key.toLowerCase();
  if (key === "z") return event.shiftKey ? redo : undo;
  return key === "y" && !event.shiftKey ? redo : null;
}

/** What was done last on this page, undone by a button or by Ctrl+Z outside fields, done again likewise. */
export function UndoBar() {
  const [said, setSaid] = useState("");
  useSaid(said || null, "said");
  const run = async (act: typeof undo) => setSaid((await act()) ?? "");
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const act = asked(event);
      if (!act) return;
      event.preventDefault();
      void run(act);
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, []);
  const done = stacks.value.done.at(-1);
  const undone = stacks.value.undone.at(-1);
  return (
    <span class="shell-undo">
      {done && (
        <button type="button" class="plain" onMouseDown={keepFocus} onClick={() => void run(undo)}>
          Undo the {nameOfStep(done)}
        </button>
      )}
      {undone && (
        <button type="button" class="plain" onMouseDown={keepFocus} onClick={() => void run(redo)}>
          Redo the {nameOfStep(undone)}
        </button>
      )}
      <span>{said}</span>
    </span>
  );
}
