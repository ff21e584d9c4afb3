import type { Build } from "../../../model/build.ts";
import type { CollectionName } from "../../../model/collections.ts";
import type { DataOf, StoredOf } from "../../../model/record.ts";
import { typedText } from "../../../units/shown.ts";
import type { Book } from "../../book.ts";
import { firstSizable } from "../sizable.ts";
import { drawnFamily, typedMotor, typedPack, typedSkirt, typedSurface } from "./records.ts";
import type { DrawnRotor, PartKey, TypedNeed } from "./typedNeed.ts";

/** A book with what was typed beside it, and the build that the need comes to. */
export interface NeedInBook {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
}

/** No stored record is called so: identifiers have no spaces. */
const TYPED = "typed ";
const NEVER = "2000-01-01T00:00:00.000Z";

/** @returns whether an identifier stands for something that is typed here and not in the book */
export const isTyped = (id: string | null): boolean => id?.startsWith(TYPED) ?? false;

function typedRecord<C extends CollectionName>(id: string, data: DataOf<C>): StoredOf<C> {
  return { id: `${TYPED}${id}`, revision: 1, createdAt: NEVER, updatedAt: NEVER, data };
}

/**
 * The book with rotors of which only the drawing is known.
 *
 * @param book - the whole bench book
 * @param drawn - their proportions [-, °]
 * @param diameter - at which they are put down [m]
 * @returns the same book where there are none
 */
export function withDrawn(book: Book, drawn: readonly DrawnRotor[], diameter: number): Book {
  if (drawn.length === 0) return book;
  const families = drawn.map((each, i) =>
    typedRecord<"rotors">(`rotor ${i + 1}`, drawnFamily(each, diameter)),
  );
  return { ...book, rotors: [...book.rotors, ...families] };
}

const AIR = { temperature: 293.15, pressure: 101_325, humidity: 0.5 };

/** Balanced, both axles driven, as a build is unless it says otherwise. */
function vehicleOf({ numbers: { mass, wheelbase, track, cgHeight } }: TypedNeed): Build["vehicle"] {
  const middle = wheelbase / 2;
  return {
    mass,
    wheelbase,
    track,
    cgHeight,
    cgFromRear: middle,
    suctionFromRear: middle,
    rollingResistance: 0.02,
    driven: "both",
    jolt: 0,
    jetArea: null,
    jetAngle: 0,
    verticalStiffness: null,
    gapLoad: null,
  };
}

/** @returns the identifiers of what the need stands on, those typed where it takes none of the book */
function partsOf({ parts }: TypedNeed): Record<PartKey, string> {
  const typed = (key: PartKey) => parts[key] ?? `${TYPED}${key}`;
  return { surface: typed("surface"), skirt: typed("skirt"), pack: typed("pack"), motor: typed("motor") };
}

/**
 * A need that is typed, as a build on a book of its own: everything that answers for a stored build answers for it.
 *
 * @param book - the whole bench book, drawn rotors with it
 * @param need - what is typed [SI]
 * @param diameter - of the build until a size is chosen [m]
 * @returns the book with the typed parts, and the build; its rotor is the first that can be sized, "" where there is none
 */
export function bookOfNeed(book: Book, need: TypedNeed, diameter: number): NeedInBook {
  const { parts, numbers } = need;
  const withTyped: Book = {
    ...book,
    surfaces: [...book.surfaces, typedRecord<"surfaces">("surface", typedSurface(need))],
    skirts: [...book.skirts, typedRecord<"skirts">("skirt", typedSkirt(need))],
    packs: [...book.packs, typedRecord<"packs">("pack", typedPack(need))],
    motors: [
      ...book.motors,
      ...(parts.motor === null ? [typedRecord<"motors">("motor", typedMotor(need))] : []),
    ],
  };
  const data: Build = {
    name: `A need of ${typedText(numbers.mass, "mass", 4)}`,
    rotor: firstSizable(withTyped, "ducted") ?? "",
    diameter,
    ...partsOf(need),
    gear: null,
    charge: 1,
    supply: { duty: 1, driverResistance: 0, auxCurrent: 0 },
    air: AIR,
    vehicle: vehicleOf(need),
    ledger: [],
    stacks: [],
    places: {},
    exchanges: { motors: [], rotors: [], packs: [], skirts: [] },
    attitudes: [],
    targetMargin: 1.5,
    overrides: {},
    uncertainty: {},
    note: "From a need typed in Size.",
  };
  return { book: withTyped, build: typedRecord<"builds">("need", data) };
}
