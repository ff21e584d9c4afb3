import { useMemo } from "preact/hooks";
import type { FitStack } from "../../../shared/book/fitUp/fitStack.ts";
import type { StackedParts } from "../../../shared/book/fitUp/partSizes.ts";
import { inUnit } from "../../../shared/units/format.ts";
import { headed } from "../../../shared/units/showing.ts";
import { Figure } from "../../charts/Figure.tsx";
import type { Picture } from "../../charts/picture.ts";
import { inOrder, nearestSpot } from "../../charts/read/spots.ts";
import type { Table } from "../../ui/table.ts";
import { drawSection, sectionHeight, tightSpots } from "./drawSection.ts";
import { fitSentence, rangeText, VERDICT_WORDS } from "./fitWords.ts";
import { type Panel, panelsOf } from "./section.ts";

function fitTable(fits: readonly FitStack[]): Table {
  return {
    columns: [
      "Stack",
      headed("Left", "length"),
      headed("Worst case from", "length"),
      headed("to", "length"),
      headed("RSS from", "length"),
      headed("to (RSS)", "length"),
      "Verdict",
    ],
    rows: fits.map(({ name, stack }) =>
      stack
        ? [
            name,
            ...[stack.clearance, ...stack.worstCase, ...stack.rss].map((metres) => inUnit(metres, "length")),
            VERDICT_WORDS[stack.verdict],
          ]
        : [name, null, null, null, null, null, "a size is missing"],
    ),
  };
}

/** @returns what a stack says of itself, a line each */
function fitLines(fits: readonly FitStack[], key: string): string[] {
  const stack = fits.find(({ name }) => name === key)?.stack;
  return stack ? [key, VERDICT_WORDS[stack.verdict], `worst case ${rangeText(stack.worstCase)}`] : [];
}

function sectionPicture(panels: readonly Panel[]): Picture {
  return (size) => {
    const spots = tightSpots(panels, size.width);
    return {
      draw: (svg) => drawSection(svg, panels, size),
      count: spots.length,
      layout: null,
      spots: () => inOrder(spots),
      under: (at, reach) => nearestSpot(spots, at, reach),
      hairline: null,
    };
  };
}

export interface SectionChartProps {
  readonly name: string;
  readonly fits: readonly FitStack[];
  readonly parts: StackedParts;
}

/** Every stack in section, to one scale, read stack by stack, with its table and ways to save it. */
export function SectionChart({ name, fits, parts }: SectionChartProps) {
  const panels = useMemo(() => panelsOf(fits, parts), [fits, parts]);
  const picture = useMemo(() => sectionPicture(panels), [panels]);
  if (panels.length === 0) return null;
  return (
    <Figure
      sentence={fitSentence(fits)}
      picture={picture}
      height={(width) => (width > 0 ? sectionHeight(panels, width) : 0)}
      name={`fit-up ${name}`}
      table={() => fitTable(fits)}
      reading={{ label: "Tight places", describe: (key) => fitLines(fits, key) }}
    />
  );
}
