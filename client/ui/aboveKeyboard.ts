import { useEffect } from "preact/hooks";

/** Below this the viewport has shrunk for other reasons than a soft keyboard [px]. */
const LEAST = 80;

/**
 * Tells the style sheet how much of the page's bottom a soft keyboard covers, as `--keyboard`: what sticks to the bottom
 * then stands above it. A browser that makes the page smaller by itself has nothing covered.
 */
export function useAboveKeyboard(): void {
  useEffect(() => {
    const seen = window.visualViewport;
    if (!seen) return;
    const { style } = document.documentElement;
    const follow = () => {
      const covered = window.innerHeight - seen.height - seen.offsetTop;
      style.setProperty("--keyboard", `${covered > LEAST && seen.scale === 1 ? Math.round(covered) : 0}px`);
    };
    follow();
    seen.addEventListener("resize", follow);
    seen.addEventListener("scroll", follow);
    return () => {
      seen.removeEventListener("resize", follow);
      seen.removeEventListener("scroll", follow);
      style.removeProperty("--keyboard");
    };
  }, []);
}
