/** How far below or above the screen counts as near it, in screens. */
const AHEAD = "50%";

/**
 * Does something once, when a place on the page comes near the screen, or is to be printed.
 *
 * @param place - its element
 * @param act - what is done
 * @returns what gives it up
 */
export function whenNear(place: Element, act: () => void): () => void {
  const watch = new IntersectionObserver((seen) => seen.some((one) => one.isIntersecting) && once(), {
    rootMargin: `${AHEAD} 0px`,
  });
  const end = () => {
    watch.disconnect();
    removeEventListener("beforeprint", once);
  };
  const once = () => {
    end();
    act();
  };
  watch.observe(place);
  addEventListener("beforeprint", once);
  return end;
}
