import { useState } from "preact/hooks";
import { couponsOf } from "../../../shared/book/fitUp/advice.ts";
import type { FitStack } from "../../../shared/book/fitUp/fitStack.ts";
import { type Printed, printedOf } from "../../../shared/book/mass/printed.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import { percentText } from "../../../shared/decide/verdict/figures.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { formatFixed, formatPlain, formatQuantity } from "../../../shared/units/format.ts";
import { isGood, type NumberSpec, readNumber } from "../../../shared/units/readNumber.ts";
import { href } from "../../app/router.ts";
import { saveBuild } from "../../state/saveBuild.ts";
import { NumberField } from "../../ui/NumberField.tsx";

/** Grams an hour, as printers are spoken of. */
const GRAMS_AN_HOUR = 1e-3 / 3600;
const HOUR = 3600;
const RATE: NumberSpec = {
  dimension: null,
  suffix: "g/h",
  limits: { positive: true, max: 1e6 },
  example: "12",
};

/** @returns how much is printed and how long that takes: what a coupon saves where a size is wrong */
export function printedText({ mass, time }: Printed): string {
  const grams = formatQuantity(mass, "mass", { decimals: 0 });
  if (time === null) return `${grams} are printed.`;
  return `${grams} are printed, ${formatFixed(time / HOUR, 1)} hours: a coupon that finds a wrong size saves them.`;
}

function Rate({ build }: { readonly build: StoredOf<"builds"> }) {
  const { printRate } = build.data;
  const stored = printRate === undefined ? "" : formatPlain(printRate / GRAMS_AN_HOUR, 9);
  const [text, setText] = useState(stored);
  const [problem, setProblem] = useState<string | null>(null);
  const save = async (event: Event) => {
    event.preventDefault();
    const reading = readNumber(RATE, text);
    if (!isGood(reading)) return setProblem(reading.message);
    setProblem(await saveBuild(build, { ...build.data, printRate: GRAMS_AN_HOUR * reading.value }));
  };
  return (
    <form onSubmit={(event) => void save(event)} noValidate class="fit-rate">
      <NumberField
        label="The printer lays down, g/h"
        spec={RATE}
        text={text}
        error={problem}
        onText={(typed) => {
          setText(typed);
          setProblem(null);
        }}
      />
      {text !== stored && <button type="submit">Keep this rate</button>}
    </form>
  );
}

export interface PrintAdviceProps {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
  readonly fits: readonly FitStack[];
}

/** Which dimensions to print by themselves and measure before the long print, and what that saves. */
export function PrintAdvice({ book, build, fits }: PrintAdviceProps) {
  const coupons = couponsOf(fits);
  if (coupons.length === 0) return null;
  const printed = printedOf(book, build.data);
  return (
    <section aria-label="Before the long print">
      <h2>Before the long print</h2>
      <p>Print a short piece with each of these sizes, measure it, and type what it is:</p>
      <ul>
        {coupons.map(({ stack, line, share, settles }) => (
          <li key={`${stack} ${line.name}`}>
            {`${line.name}: ${percentText(share)} of the uncertainty of “${stack}”`}
            {settles ? "; measured as drawn, the stack closes" : ""}
          </li>
        ))}
      </ul>
      {printed.mass > 0 ? (
        <>
          <p>{printedText(printed)}</p>
          <Rate key={build.data.printRate} build={build} />
        </>
      ) : (
        <p>
          Say in <a href={href("mass", build.id)}>Mass</a> which lines are printed, and the hours that this
          saves stand here.
        </p>
      )}
    </section>
  );
}
