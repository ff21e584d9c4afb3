import type { Covered } from "./covered.ts";
import type { Scenario } from "./scenarios.ts";

const percent = (share: number, decimals = 0) => `${(100 * share).toFixed(decimals)} %`;
const signed = (share: number) => `${share < 0 ? "−" : "+"}${percent(Math.abs(share), 1)}`;

/** @returns the page of docs/accuracy.md */
export function accuracyPage(
  rows: readonly { readonly scenario: Scenario; readonly covered: Covered }[],
  makers: number,
): string {
  const lines = rows.map(({ scenario, covered }) => {
    const { inside, bias, width } = covered;
    return `| ${scenario.name} | ${percent(inside, 1)} | ${signed(bias)} | ${percent(width)} |`;
  });
  return `# Accuracy

How often the truth lies within the stated 5 to 95 % band. Written by \`npm run coverage\`; don't edit it by hand.

## Simulated makers
${makers} makers a scenario, one a seed. Each has a vehicle of the maker's own (gap, pull factor, lip loss, a plate, instruments with gains, drawn as [uncertainty](method/uncertainty.md) says they are), takes the tests of the scenario through noisy instruments, files them in a book, and asks for the pull.
With ${makers} makers a share is known to about ±${Math.ceil((100 * 1.96 * 0.3) / Math.sqrt(makers))} % (95 %). 90 % is right; where what the tests state is true, 86 to 94 % are wanted.

| scenario | truth within 5 to 95 % | median against truth, mean | width of the band |
| --- | --- | --- | --- |
${lines.join("\n")}

- Median against truth: above 0 in the mean where the pull factor is drawn, as truth stands below the line, 1/κ has a mean of 1.01, and a gap that may be narrow or wide pulls unevenly.
- A pull factor of 0.85 or 1.15 lies 1.6 of its standard uncertainties from 1. Without a pull such a vehicle is at the edge of every band; two or more pulls bring it back.
- Instruments that are five times as wrong as their tests state are a warning, not a case that the band has to hold.

## What this does not show
- The makers' vehicles obey the model, but for what their scenario says. It shows that what is stated uncertain is carried through rightly, not that the model is right.
- Never held against a measurement from outside: the lip gap at gaps of half a millimetre, and the whole chain from tests to the pull of a vehicle. The parts are, each in its published check (tests/published).
`;
}
