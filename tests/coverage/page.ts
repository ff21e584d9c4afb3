import type { Covered } from "./covered.ts";
import type { LeftOut } from "./leftOut.ts";
import type { OutsideLine } from "./outside.ts";
import { heldLessSaid, reliabilityOf } from "./reliability.ts";
import type { Scenario } from "./scenarios.ts";

/** What the page is made of. */
export interface Accuracy {
  readonly makers: number;
  readonly rows: readonly { readonly scenario: Scenario; readonly covered: Covered }[];
  readonly outside: readonly OutsideLine[];
  readonly leftOut: readonly LeftOut[];
}

const percent = (share: number, decimals = 0) => `${(100 * share).toFixed(decimals)} %`;
const signed = (value: number, decimals: number) =>
  `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(decimals)}`;
const signedPercent = (share: number) => `${signed(100 * share, 1)} %`;

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => "---"), ...rows].map((cells) => `| ${cells.join(" | ")} |`).join("\n");

function makersTable(rows: Accuracy["rows"]): string {
  return table(
    [
      "scenario",
      "truth within 5 to 95 %",
      "median against truth, mean",
      "width of the band",
      "held less chance said",
    ],
    rows.map(({ scenario, covered: { inside, bias, width, said } }) => [
      scenario.honest ? scenario.name : `*${scenario.name}*`,
      percent(inside, 1),
      signedPercent(bias),
      percent(width),
      `${signed(100 * heldLessSaid(said), 0)} %`,
    ]),
  );
}

function chanceTable(rows: Accuracy["rows"]): string {
  const all = rows.filter(({ scenario }) => scenario.honest).flatMap(({ covered }) => covered.said);
  return table(
    ["chance said, about", "makers", "said, mean", "held"],
    reliabilityOf(all).map(({ about, count, said, held }) => [
      about.toFixed(1),
      String(count),
      count > 0 ? percent(said, 1) : "–",
      count > 0 ? percent(held, 1) : "–",
    ]),
  );
}

function outsideTable(lines: readonly OutsideLine[]): string {
  return table(
    ["predicted", "readings", "median", "5 to 95 %", "worst", "measured by"],
    lines.map(({ what, count, unit, median, low, high, worst, source }) => {
      const decimals = unit === "%" ? 1 : 0;
      const text = (value: number) => signed(value, decimals);
      return [
        what,
        String(count),
        `${text(median)} ${unit}`,
        `${text(low)} to ${text(high)} ${unit}`,
        `${text(worst)} ${unit}`,
        source,
      ];
    }),
  );
}

function leftOutTable(list: readonly LeftOut[]): string {
  return table(
    ["left out", "size", "of", "how"],
    list.map(({ what, size, of, how }) => [what, signedPercent(size), of, how]),
  );
}

/** A share counted among so many is known to ± this, 95 % [%]. */
const knownTo = (makers: number) => Math.ceil((100 * 1.96 * 0.3) / Math.sqrt(makers));

/** @returns the page of docs/accuracy.md */
export function accuracyPage({ makers, rows, outside, leftOut }: Accuracy): string {
  return `# Accuracy

How far the figures can be trusted, as far as anything was held against them. Written by \`npm run coverage\` from what the tests found; don't edit it by hand.

## Never held against a measurement
- **The whole chain**, from bench tests to the pull of a vehicle: no published measurement was found. Your own pulls are the first, and Curves → Record shows how far the predictions were off for you.
- **The leak under a lip** of half a millimetre, at the few kilopascals of such a cavity: its law is that of textbooks, its two figures carry ±15 % each. A leak test replaces it.
- **The pull factor** of a cavity that isn't at one pressure: ±10 % until a pull is logged.
- **A rotor estimated from its geometry**: ±30 %. **A winding's heat** by its can: within a factor of 2.

## Against measurements from outside
Predicted less measured, every reading of each set. One line is one set of data, with its source; the tests are in \`tests/published\`.

${outsideTable(outside)}

Of a set that was fitted the errors are what the fit leaves, not what it predicts; each line says which.

## Simulated makers
${makers} makers a scenario, one a seed. Each has a vehicle of the maker's own (gap, pull factor, lip, state of charge, mass, a plate, instruments with gains, pulls with their scatter, drawn as [uncertainty](method/uncertainty.md) says they are), takes the tests of the scenario through noisy instruments, files them in a book, and asks for the pull, and for the chance to hold on a ceiling.
With ${makers} makers a share is known to about ±${knownTo(makers)} % (95 %). 90 % is right; where what the tests state is true, 86 to 94 % are wanted. In italics: what is stated there is not true, or one vehicle at the edge of what it is.

${makersTable(rows)}

- Median against truth: above 0 in the mean where the pull factor is drawn, as truth stands below the line, 1/κ has a mean of 1.01, and a gap that may be narrow or wide pulls unevenly.
- A pull factor of 0.85 or 1.15 lies 1.6 of its standard uncertainties from 1. Without a pull such a vehicle is at the edge of every band; two or more pulls bring it back.
- Pulls that scatter less than the 5 % that calibrations expect leave the band a little wide, those that scatter twice as much a little narrow: five of them tell their scatter only roughly.
- Instruments or a lip's law further off than stated are a warning, not a case that the band has to hold.
- Held less chance said: over the makers to whom a chance of 5 to 95 % was said.

Chances of holding, all scenarios whose statements are true:

${chanceTable(rows)}

It shows that what is stated uncertain is carried through rightly, not that the model is right: the makers' vehicles obey it, but for what their scenario says.

## What the model leaves out
On the demo's Pane crawler:

${leftOutTable(leftOut)}

Pulls of the same skirt hold the first three in the pull factor, as long as speed and gap are about the same.
`;
}
