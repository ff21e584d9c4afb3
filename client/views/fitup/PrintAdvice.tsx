import { couponsOf } from "../../../shared/book/fitUp/advice.ts";
import type { FitStack } from "../../../shared/book/fitUp/fitStack.ts";
import { percentText } from "../../../shared/decide/verdict/figures.ts";
import type { StoredOf } from "../../../shared/model/record.ts";

export interface PrintAdviceProps {
  readonly build: StoredOf<"builds">;
  readonly fits: readonly FitStack[];
}

/** Which dimensions to print by themselves and measure before the long print. */
export function PrintAdvice({ fits }: PrintAdviceProps) {
  const coupons = couponsOf(fits);
  if (coupons.length === 0) return null;
  return (
    <section aria-label="Before the long print">
      <h2>Before the long print</h2>
      <p>Print a short piece with each of these sizes, measure it, and type what it is:</p>
      <ul>
        {coupons.map(({ stack, line, share, settles }) => (
          <li key={`${stack} ${line.name}`}>
            {`${line.name}: ${percentText(share)} of the doubt of “${stack}”`}
            {settles ? "; measured as drawn, the stack closes" : ""}
          </li>
        ))}
      </ul>
    </section>
  );
}
