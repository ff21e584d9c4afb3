import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { explain, explaining, explainNoMore } from "./explaining.ts";

export interface ExplainedProps {
  /** what it is called, for those who don't see it */
  readonly word: string;
  /** what it means, a line or two */
  readonly meaning: string;
  readonly class: string;
  readonly children: ComponentChildren;
}

/** A word that says what it means on hover, focus, click and tap; Escape takes the meaning away. */
export function Explained({ word, meaning, class: look, children }: ExplainedProps) {
  const button = useRef<HTMLButtonElement>(null);
  const shown = () => explaining.peek()?.of === button.current;
  useEffect(
    () => () => {
      if (shown()) explainNoMore();
    },
    [],
  );
  return (
    <button
      ref={button}
      type="button"
      class={look}
      // as it is seen: a subscript is set low there
      aria-label={`${word}: ${meaning}`.replaceAll("_", "")}
      onPointerEnter={(event) => event.pointerType === "mouse" && explain(event.currentTarget, meaning)}
      onPointerLeave={(event) => event.pointerType === "mouse" && shown() && explainNoMore("soon")}
      onFocus={(event) =>
        event.currentTarget.matches(":focus-visible") && explain(event.currentTarget, meaning)
      }
      onBlur={() => shown() && explainNoMore()}
      onClick={(event) => {
        // its place may be a row or a label that a click means something else for
        event.stopPropagation();
        event.preventDefault();
        if (shown() && explaining.peek()?.pinned) explainNoMore();
        else explain(event.currentTarget, meaning, true);
      }}
    >
      {children}
    </button>
  );
}
