import { useEffect, useRef } from "preact/hooks";
import { say } from "../state/sayings.ts";

/** So long words stand before they are said [ms]: a setting that is moved by keys changes them with every step. */
const REST = 1000;

/**
 * Says words that change, once they stand for a moment.
 *
 * @param text - null while there are none; what follows empty ones is news
 * @param first - "silent": what stands there first is read where it stands; "said": it answers something done
 */
export function useSaid(text: string | null, first: "silent" | "said" = "silent"): void {
  const last = useRef<string | null>(null);
  useEffect(() => {
    if (text === null && first === "said") last.current = null;
    if (text === null || text === last.current) return;
    if (text === "" || (last.current === null && first === "silent")) {
      last.current = text;
      return;
    }
    const rests = setTimeout(() => {
      last.current = text;
      say(text);
    }, REST);
    return () => clearTimeout(rests);
  }, [text, first]);
}
