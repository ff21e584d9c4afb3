import type { Book } from "../../../../shared/book/book.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import type { BenchTest, TestKind } from "../../../../shared/model/tests/index.ts";
import { offered } from "../../../../shared/model/withdrawn.ts";
import { unitsShown } from "../../../../shared/units/showing.ts";
import { typedText } from "../../../../shared/units/shown.ts";
import type { Draft } from "../record/draft.ts";
import { fieldsOf, KINDS } from "../record/kinds.ts";
import type { FieldSpec, KindSpec } from "../record/spec.ts";
import { unitsOf, writeDraft } from "../record/writeDraft.ts";

interface Named {
  readonly name: string;
  readonly retired?: string;
}

/** Belongs to the one test in which it was typed. */
const OF_ONE_TEST: ReadonlySet<string> = new Set([
  "title",
  "date",
  "note",
  "charge",
  "resistance",
  "struckOut",
]);

const STARTING: Readonly<Record<string, string>> = {
  flowFrom: "bleed-plate",
  direction: "straight-off",
  contact: "wheels",
  duty: "100 %",
  across: "pack",
  end: "empty",
  weighed: "build",
};

/** Weather is of the day, a setting lasts until it is changed. */
const isOfOneTest = (path: string): boolean => OF_ONE_TEST.has(path) || path.startsWith("air.");

/** @returns the day on the maker's own calendar, YYYY-MM-DD */
export function dayOf(now: Date): string {
  const two = (number: number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** @returns the diameters in which a rotor is printed, as text */
export function sizesOf(book: Book | null, rotorId: string | undefined): string[] {
  const rotor = book?.rotors.find(({ id }) => id === rotorId);
  return rotor?.data.sizes.map(({ diameter }) => typedText(diameter, "length", 6)) ?? [];
}

/** @returns the parts that a field offers: of the rotors only those of the kind that the test is about, of the instruments those that measure what is read */
export function partsFor(
  book: Book,
  field: FieldSpec & { readonly type: "part" },
  chosen: string | null = null,
): readonly { readonly id: string; readonly data: Named }[] {
  if (field.rotors)
    return offered(
      book.rotors.filter(({ data }) => data.kind === field.rotors),
      chosen,
    );
  if (field.measures)
    return offered(
      book.instruments.filter(({ data }) => data.measures === field.measures),
      chosen,
    );
  const all: readonly { readonly id: string; readonly data: Named }[] = book[field.collection];
  return offered(all, chosen);
}

/** The first rotor of the kind that the test is about, where only one of that kind is in the book. */
function onlyOfKind(book: Book, spec: KindSpec): Record<string, string> {
  const found = spec.fields.flatMap((field) =>
    field.type === "part" && field.rotors ? [partsFor(book, field)] : [],
  );
  const rotor = found[0]?.length === 1 ? book.rotors.find(({ id }) => id === found[0][0].id) : undefined;
  if (!rotor) return {};
  const { sizes } = rotor.data;
  return {
    rotor: rotor.id,
    ...(sizes.length === 1 ? { diameter: typedText(sizes[0].diameter, "length", 6) } : {}),
  };
}

/** @returns the newest test of a kind, by its day */
export function lastOf(book: Book, kind: TestKind): StoredOf<"tests"> | null {
  const order = (test: StoredOf<"tests">) => `${test.data.date} ${test.createdAt}`;
  return book.tests
    .filter((test) => test.data.kind === kind)
    .reduce<StoredOf<"tests"> | null>(
      (last, test) => (last && order(last) >= order(test) ? last : test),
      null,
    );
}

/** A propeller's build tells nothing for a curve test, a ducted one's nothing for a thrust test. */
function suits(book: Book, spec: KindSpec): (build: StoredOf<"builds">) => boolean {
  const wanted = spec.fields.flatMap((field) =>
    field.type === "part" && field.rotors ? [field.rotors] : [],
  );
  if (wanted.length === 0) return () => true;
  return ({ data }) => book.rotors.find(({ id }) => id === data.rotor)?.data.kind === wanted[0];
}

function fromBuild(book: Book, buildId: string | null, spec: KindSpec): Record<string, string> {
  const build = book.builds.find(({ id }) => id === buildId) ?? book.builds.find(suits(book, spec));
  if (!build || !suits(book, spec)(build)) return {};
  const { rotor, motor, pack, skirt, surface, gear, diameter } = build.data;
  const parts = { build: build.id, rotor, motor, pack, surface, diameter: typedText(diameter, "length", 6) };
  return { ...parts, ...(skirt ? { skirt } : {}), ...(gear ? { gear } : {}) };
}

/** The only part of its collection needs no choosing. */
function onlyParts(book: Book): Record<string, string> {
  const { rotors, motors, packs, skirts, surfaces, gears } = book;
  const lists = { rotor: rotors, motor: motors, pack: packs, skirt: skirts, surface: surfaces, gear: gears };
  const size = rotors.length === 1 && rotors[0].data.sizes.length === 1 ? rotors[0].data.sizes[0] : null;
  return {
    ...Object.fromEntries(
      Object.entries(lists).flatMap(([key, list]) => (list.length === 1 ? [[key, list[0].id]] : [])),
    ),
    ...(size ? { diameter: typedText(size.diameter, "length", 6) } : {}),
  };
}

function fromLast(test: BenchTest | undefined): Record<string, string> {
  if (!test) return {};
  const { fields } = writeDraft(test);
  return Object.fromEntries(
    Object.entries(fields).filter(([path, text]) => text !== "" && !isOfOneTest(path)),
  );
}

/** Units of the last test's columns, but of quantities whose unit was chosen for the book: those are meant in it. */
function lastUnits({ columns }: KindSpec, last: BenchTest): Readonly<Record<string, string>> {
  const chosen = unitsShown();
  const isChosen = (key: string) => {
    const name = columns.find((column) => column.key === key)?.dimension;
    return name ? chosen[name] !== undefined : false;
  };
  return Object.fromEntries(Object.entries(unitsOf(last)).filter(([key]) => !isChosen(key)));
}

export interface Asked {
  readonly kind: TestKind;
  readonly today: string;
  /** the build whose parts are meant, where no test of the kind was logged */
  readonly buildId?: string | null;
  /** parts that the address names, "skirt" → id */
  readonly parts?: Readonly<Record<string, string>>;
}

/** A new test's draft: set up as the last one of its kind, else as the build; one empty row. */
export function firstDraft(book: Book, { kind, today, buildId = null, parts = {} }: Asked): Draft {
  const spec = KINDS[kind];
  const last = lastOf(book, kind)?.data;
  const known = {
    ...onlyParts(book),
    ...onlyOfKind(book, spec),
    ...fromBuild(book, buildId, spec),
    ...fromLast(last),
    ...parts,
  };
  const fields = Object.fromEntries(
    fieldsOf(spec).map((field) => {
      const text = known[field.key as keyof typeof known] ?? STARTING[field.key] ?? "";
      const isGone = field.type === "part" && !partsFor(book, field).some(({ id }) => id === text);
      const notMeant =
        field.type === "part" && !field.required && last === undefined && !(field.key in parts);
      return [field.key, isGone || notMeant ? "" : text];
    }),
  );
  const holes = last ? writeDraft(last, book).holes : [];
  const usual = spec.columns.flatMap(({ key, unit }) => (unit ? [[key, unit]] : []));
  const units = { ...Object.fromEntries(usual), ...(last ? lastUnits(spec, last) : {}) };
  const row = { key: 0, cells: {}, open: holes.map(() => ""), aside: null };
  return { kind, fields: { ...fields, date: today }, holes, rows: [row], units };
}
