import type { Book } from "../../../shared/book/book.ts";
import { fitStacks } from "../../../shared/book/fitUp/fitStack.ts";
import type { StackedPart } from "../../../shared/book/fitUp/partSizes.ts";
import type { Build } from "../../../shared/model/build.ts";
import { mmText, tightestFirst, VERDICT_WORDS } from "./fitWords.ts";

/** Parts of a build that another of the book can take the place of. */
export type Exchange = Partial<Pick<Build, "motor" | "rotor" | "diameter" | "pack" | "skirt" | "gear">>;

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

const MM = 1000;

/** @returns how a build would close: "Bell motor, 22 mm: will not close, 1.30 mm short" */
function withVerdict(book: Book, build: Build, name: string, exchange: Exchange): string {
  const [tightest] = tightestFirst(fitStacks(book, { ...build, ...exchange }));
  if (!tightest) return name;
  const { verdict, worstCase, clearance } = tightest.stack;
  const end = verdict === "will-not-close" ? clearance : worstCase[0];
  return `${name}: ${VERDICT_WORDS[verdict]}, ${mmText(Math.abs(end))} ${end < 0 ? "short" : "left"}`;
}

type Named = readonly (readonly [value: string, name: string, exchange: Exchange])[];

/** Records in use, and the one that the build has. */
function namesOf(book: Book, build: Build, part: "motor" | "pack" | "skirt" | "gear"): Named {
  const records: readonly {
    readonly id: string;
    readonly data: { readonly name: string; readonly retired?: string };
  }[] = book[`${part}s`];
  const offered = records.filter(({ id, data }) => data.retired === undefined || id === build[part]);
  const listed = offered.map(({ id, data }) => [id, data.name, { [part]: id }] as const);
  return build[part] === null ? [["", "none", {}], ...listed] : listed;
}

const ownRotor = ({ rotor, diameter }: Build) => `${rotor} ${diameter}`;

function rotorNames(book: Book, build: Build): Named {
  const sizes = book.rotors
    .filter(({ id, data }) => data.retired === undefined || id === build.rotor)
    .flatMap(({ id, data }) =>
      data.sizes.map(({ diameter }): Named[number] => {
        const name = `${data.name}, ${Number((MM * diameter).toPrecision(6))} mm`;
        return [`${id} ${diameter}`, name, { rotor: id, diameter }];
      }),
    );
  const own = ownRotor(build);
  return sizes.some(([value]) => value === own) ? sizes : [[own, "as it is", {}], ...sizes];
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
    const names = part === "rotor" ? rotorNames(book, build) : namesOf(book, build, part);
    if (names.length < 2) return [];
    const choices = names.map(([value, name, exchange]) => ({
      value,
      label: withVerdict(book, build, name, exchange),
      exchange,
    }));
    return [{ label, value: part === "rotor" ? ownRotor(build) : (build[part] ?? ""), choices }];
  });
}
