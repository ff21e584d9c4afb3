import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { explaining, explainNoMore, stay } from "./explaining.ts";

/** Between the word and its explanation, and from there to the screen's edge [px]. */
const [BELOW, EDGE] = [6, 8];

/** Where the explanation of the word at hand stands: one for the whole page, over everything. */
export function Explanation() {
  const shown = explaining.value;
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = box.current;
    if (!element || !shown) return;
    const word = shown.of.getBoundingClientRect();
    const { width, height } = element.getBoundingClientRect();
    const below = word.bottom + BELOW;
    const fits = below + height + EDGE <= innerHeight;
    element.style.top = `${fits ? below : Math.max(EDGE, word.top - BELOW - height)}px`;
    element.style.left = `${Math.max(EDGE, Math.min(word.left, innerWidth - width - EDGE))}px`;
  }, [shown]);
  useEffect(() => {
    if (!shown) return;
    const key = (event: KeyboardEvent) => event.key === "Escape" && explainNoMore();
    const elsewhere = (event: PointerEvent) => {
      const on =
        event.target instanceof Node &&
        (shown.of.contains(event.target) || box.current?.contains(event.target));
      if (!on) explainNoMore();
    };
    const moved = () => explainNoMore();
    addEventListener("keydown", key);
    addEventListener("pointerdown", elsewhere);
    addEventListener("scroll", moved, { capture: true, passive: true });
    return () => {
      removeEventListener("keydown", key);
      removeEventListener("pointerdown", elsewhere);
      removeEventListener("scroll", moved, { capture: true });
    };
  }, [shown]);
  if (!shown) return null;
  return (
    // the word itself says it to those who don't see this
    <div
      class="explanation"
      ref={box}
      aria-hidden="true"
      onPointerEnter={stay}
      onPointerLeave={() => explainNoMore("soon")}
    >
      {shown.text}
    </div>
  );
}
