import type { Spread } from "../../shared/decide/uncertainty.ts";
import { rangeText, sureText } from "./uncertaintyWords.ts";

/** How sure an attitude is, and the range of its margin; nothing where it isn't known. */
export function Sure({ spread }: { spread: Spread | null }) {
  if (!spread) return null;
  const range = rangeText(spread);
  return (
    <>
      <small class="sure">sure to hold {sureText(spread.holds)}</small>
      {range && <small>{range}</small>}
    </>
  );
}
