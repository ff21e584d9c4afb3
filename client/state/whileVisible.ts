/**
 * Keeps something that holds a connection open only while the page can be seen: a browser allows six connections to
 * one server, and pages that are hidden, or kept to be gone back to, would use them up.
 *
 * @param start - starts it and returns what ends it; called anew each time the page is shown again
 * @returns ends it for good
 */
export function whileVisible(start: () => () => void): () => void {
  let end: (() => void) | null = null;
  const hide = () => {
    end?.();
    end = null;
  };
  const follow = () => {
    if (document.visibilityState === "hidden") hide();
    else end ??= start();
  };
  document.addEventListener("visibilitychange", follow);
  addEventListener("pagehide", hide);
  addEventListener("pageshow", follow);
  follow();
  return () => {
    document.removeEventListener("visibilitychange", follow);
    removeEventListener("pagehide", hide);
    removeEventListener("pageshow", follow);
    hide();
  };
}
