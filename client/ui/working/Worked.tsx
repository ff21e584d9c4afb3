import type { ComponentChildren } from "preact";
import { notice } from "../../state/notice.ts";
import { type Shown, shownWorking } from "./shown.ts";

interface WorkedProps {
  /** looked for when the figure is pressed; null: it has none */
  readonly of: () => Shown | null | Promise<Shown | null>;
  /** of what it is the working, for those who don't see where it stands */
  readonly what: string;
  readonly children: ComponentChildren;
}

/** A computed figure that shows its working when it is pressed. */
export function Worked({ of, what, children }: WorkedProps) {
  const show = async () => {
    try {
      shownWorking.value = await of();
    } catch {
      notice.value = "The working could not be loaded; reload the page.";
    }
  };
  return (
    <button type="button" class="worked" aria-haspopup="dialog" onClick={() => void show()}>
      {children}
      <span class="visually-hidden">, show the working of {what}</span>
    </button>
  );
}
