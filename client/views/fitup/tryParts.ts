import type { Book } from "../../../shared/book/book.ts";
import { fitStacks } from "../../../shared/book/fitUp/fitStack.ts";
import type { StackedPart } from "../../../shared/book/fitUp/partSizes.ts";
import type { Build } from "../../../shared/model/build.ts";
import { type Exchange, partChoices, partValue } from "../../ui/partChoices.ts";
import { sizeText, tightestFirst, VERDICT_WORDS } from "./fitWords.ts";

interface Choice {
  readonly value: string;
  readonly label: string;
  readonly exchange: Exchange;
}

interface Choices {
  readonly label: string;
  /** of what the build has */
  readonly value: string;
  readonly choices: readonly Choice[];
}

/** @returns how a build would close: "Bell motor, 22 mm: will not close, 1.30 mm short" */
function withVerdict(book: Book, build: Build, name: string, exchange: Exchange): string {
  const [tightest] = tightestFirst(fitStacks(book, { ...build, ...exchange }));
  if (!tightest) return name;
  const { verdict, worstCase, clearance } = tightest.stack;
  const end = verdict === "will-not-close" ? clearance : worstCase[0];
  return `${name}: ${VERDICT_WORDS[verdict]}, ${sizeText(Math.abs(end))} ${end < 0 ? "short" : "left"}`;
}

const LISTS = [
  { part: "motor", label: "Motor" },
  { part: "rotor", label: "Rotor" },
  { part: "pack", label: "Pack" },
  { part: "skirt", label: "Skirt" },
  { part: "gear", label: "Running gear" },
] as const satisfies readonly { readonly part: StackedPart; readonly label: string }[];

const isStacked = ({ stacks }: Build, part: StackedPart): boolean =>
  stacks.some(({ space, parts }) => [space, ...parts].some(({ of }) => of?.startsWith(`${part}.`)));

/** @returns the parts that stand in a build's stacks with those of the book that may take their place, each with how it would close */
export function choicesFor(book: Book, build: Build): Choices[] {
  return LISTS.filter(({ part }) => isStacked(build, part)).flatMap(({ part, label }) => {
    const parts = partChoices(book, build, part);
    if (parts.length < 2) return [];
    const choices = parts.map(({ value, name, exchange }) => ({
      value,
      label: withVerdict(book, build, name, exchange),
      exchange,
    }));
    return [{ label, value: partValue(build, part), choices }];
  });
}
