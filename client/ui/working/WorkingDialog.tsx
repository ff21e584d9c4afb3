import { useEffect, useRef, useState } from "preact/hooks";
import { asText } from "./asText.ts";
import { type Shown, shownWorking } from "./shown.ts";
import { WorkingTree } from "./WorkingTree.tsx";

const close = () => {
  shownWorking.value = null;
};

/** Over the page: a figure's working, down to the readings, and its text to be copied. */
export default function WorkingDialog({ working, board }: Shown) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [said, setSaid] = useState("");
  useEffect(() => dialog.current?.showModal(), []);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(asText(working, board));
      setSaid("Copied.");
    } catch (error) {
      if (!(error instanceof DOMException)) throw error;
      setSaid("The browser doesn't let it be copied.");
    }
  };
  return (
    <dialog ref={dialog} class="working-dialog" onClose={close} aria-label={`Working of ${working.title}`}>
      <h2>{working.title}</h2>
      <WorkingTree working={working} board={board} />
      <p class="working-foot">
        <button type="button" onClick={() => void copy()}>
          Copy as text
        </button>
        <button type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
        <span role="status">{said}</span>
      </p>
    </dialog>
  );
}
