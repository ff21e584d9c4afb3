import { useEffect, useId, useRef } from "preact/hooks";
import { anchorOf, goToField } from "./anchor.ts";

/** A number that may be a slip, as it is asked about. */
export interface Question {
  readonly path: string;
  /** "Pull 4, held" */
  readonly label: string;
  /** as typed: "900 kg" */
  readonly text: string;
  /** "986 g was predicted. Is the unit right?" */
  readonly why: string;
}

export interface AskBeforeSavingProps {
  readonly questions: readonly Question[];
  /** it is right: save it as it is */
  readonly onSave: () => void;
  /** it is not, or it is left open: back to the form */
  readonly onBack: () => void;
}

/** More lines than these are counted: a whole column in a wrong unit is one mistake. */
const SHOWN = 8;

/** Asked before anything is stored: numbers far from what was expected. Takes the focus; Escape goes back to the first of them. */
export function AskBeforeSaving({ questions, onSave, onBack }: AskBeforeSavingProps) {
  const id = useId();
  const box = useRef<HTMLElement>(null);
  const [first] = questions;
  useEffect(() => {
    box.current?.scrollIntoView({ block: "center" });
    box.current?.focus({ preventScroll: true });
  }, []);
  const back = () => {
    onBack();
    requestAnimationFrame(() => goToField(first.path));
  };
  const more = questions.length - SHOWN;
  return (
    <section
      class="ask-before"
      ref={box}
      tabIndex={-1}
      role="alertdialog"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-list`}
      onKeyDown={(event) => event.key === "Escape" && back()}
    >
      <p id={`${id}-title`}>
        <strong>Not saved yet. {questions.length === 1 ? "Is this right?" : "Are these right?"}</strong>
      </p>
      <ul id={`${id}-list`}>
        {questions.slice(0, SHOWN).map(({ path, label, text, why }) => (
          <li key={path}>
            <a
              href={`#${anchorOf(path)}`}
              onClick={(event) => {
                event.preventDefault();
                onBack();
                requestAnimationFrame(() => goToField(path));
              }}
            >
              {label}
            </a>{" "}
            {text}: {why}
          </li>
        ))}
        {more > 0 && <li>and {more} more like these</li>}
      </ul>
      <p class="ask-buttons">
        <button type="button" class="primary" onClick={back}>
          Back to the form
        </button>{" "}
        <button type="button" onClick={onSave}>
          It is right, save it
        </button>
      </p>
    </section>
  );
}
