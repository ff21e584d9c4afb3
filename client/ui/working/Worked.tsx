import type { ComponentChildren } from "preact";
import { type Shown, shownWorking } from "./shown.ts";

interface WorkedProps {
  /** looked for when the figure is pressed; null: it has none */
  readonly of: () => Shown | null;
  /** of what it is the working, for those who don't see where it stands */
  readonly what: string;
  readonly children: ComponentChildren;
}

/** A computed figure that shows its working when it is pressed. */
export function Worked({ of, what, children }: WorkedProps) {
  const show = () => {
    shownWorking.value = of();
  };
  return (
    <button type="button" class="worked" aria-haspopup="dialog" onClick={show}>
      {children}
      <span class="visually-hidden">, show the working of {what}</span>
    </button>
  );
}
