import { useEffect, useState } from "preact/hooks";

/** Where a page is one column; the style sheets' own. */
export const NARROW = "(max-width: 900px)";

/** @returns whether the screen is as a media query says, as it changes */
export function useMedia(query: string): boolean {
  const [matches, setMatches] = useState(() => window.matchMedia(query).matches);
  useEffect(() => {
    const list = window.matchMedia(query);
    const follow = () => setMatches(list.matches);
    follow();
    list.addEventListener("change", follow);
    return () => list.removeEventListener("change", follow);
  }, [query]);
  return matches;
}
