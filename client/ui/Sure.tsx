import type { Spread } from "../../shared/decide/uncertainty.ts";
import { Term } from "./Term.tsx";
import { rangeText, sureText } from "./uncertaintyWords.ts";

/** An attitude's chance of holding, and the range of its margin; nothing where it isn't known. */
export function Sure({ spread }: { spread: Spread | null }) {
  if (!spread) return null;
  const range = rangeText(spread);
  return (
    <>
      <small class="sure">
        <Term of="chance of holding" /> {sureText(spread.holds)}
      </small>
      {range && <small>{range}</small>}
    </>
  );
}
