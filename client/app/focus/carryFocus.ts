import { successor } from "./successor.ts";

const CONTROLS = "a[href], button, input, select, textarea, summary, [tabindex]" as const;
/** A finger that lands in one of these brings up the keyboard. */
const TYPED_IN = "textarea, input:not([type=checkbox], [type=radio], [type=range])";
/** Keys that may take the focused control off the page without a click. */
const ENDS: readonly string[] = ["Enter", "Escape", "Delete", "Backspace"];
/** What stands on the control that an action is followed by, where that isn't the first of those in its place. */
const WISHED = "[data-next]";

interface Held {
  readonly control: HTMLElement;
  readonly room: HTMLElement;
  /** the room's controls when this one was last acted on */
  readonly before: readonly HTMLElement[];
}

const isOpen = (control: HTMLElement): boolean =>
  !control.matches(":disabled, [tabindex='-1']") && control.checkVisibility();

function controlsOf(room: HTMLElement): HTMLElement[] {
  return [...room.querySelectorAll<HTMLElement>(CONTROLS)].filter(isOpen);
}

function holding(control: HTMLElement): Held {
  const room = control.closest("main") ?? document.body;
  const all = [...room.querySelectorAll<HTMLElement>(CONTROLS)];
  return { control, room, before: all.filter((each) => each === control || isOpen(each)) };
}

/** Focuses a part of the page without moving the page under it. */
export function focusQuietly(element: HTMLElement | null | undefined): void {
  element?.focus({ preventScroll: true });
}

/** Shows the content from its start and gives it the focus, as after a change of view. */
export function focusContent(): void {
  scrollTo(0, 0);
  focusQuietly(document.querySelector("main"));
}

/** Moves the focus on from a control that an action took off the page or switched off. */
function moveOn({ control, room, before }: Held, byTouch: boolean): void {
  const now = controlsOf(room).filter((each) => !(byTouch && each.matches(TYPED_IN)));
  const next = successor(before, control, now, (each) => each.matches(WISHED));
  if (next) next.focus();
  else focusContent();
}

/**
 * Keeps the focus from falling to the page: where the focused control goes, it moves to what comes next; where the
 * whole content goes with it, to the content.
 */
export function carryFocus(): void {
  let held: Held | null = null;
  let byTouch = false;
  document.addEventListener("pointerdown", ({ pointerType }) => {
    byTouch = pointerType === "touch";
  });
  const actedOn = () => {
    if (held) held = holding(held.control);
  };
  document.addEventListener(
    "keydown",
    ({ key }) => {
      byTouch = false;
      if (ENDS.includes(key)) actedOn();
    },
    true,
  );
  document.addEventListener("click", actedOn, true);
  document.addEventListener("focusin", ({ target }) => {
    if (target instanceof HTMLElement) held = holding(target);
  });
  document.addEventListener("focusout", ({ target }) =>
    queueMicrotask(() => {
      const isLeft = target instanceof HTMLElement && target.isConnected && !target.matches(":disabled");
      if (isLeft && held?.control === target) held = null;
    }),
  );
  new MutationObserver(() => {
    if (!held || (held.control.isConnected && !held.control.matches(":disabled"))) return;
    const lost = held;
    held = null;
    const { activeElement } = document;
    if (activeElement === document.body || activeElement === lost.control) moveOn(lost, byTouch);
  }).observe(document.body, { childList: true, subtree: true, attributeFilter: ["disabled"] });
}
