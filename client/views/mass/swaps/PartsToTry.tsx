import { useState } from "preact/hooks";
import { findById } from "../../../../shared/book/book.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { Exchanges } from "../../../../shared/model/exchanges.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { typedText } from "../../../../shared/units/shown.ts";
import { saveBuild } from "../../../state/saveBuild.ts";

const SAME_DIAMETER = 1e-9;

/** A part of the book that may be ticked. */
interface Tick {
  readonly key: string;
  readonly name: string;
  readonly isTicked: boolean;
  readonly toggled: Exchanges;
}

type Listed = "motors" | "packs" | "skirts";
const OWN = { motors: "motor", packs: "pack", skirts: "skirt" } as const;

function partTicks(book: Book, build: Build, list: Listed): Tick[] {
  const { exchanges } = build;
  const records: readonly {
    readonly id: string;
    readonly data: { readonly name: string; readonly retired?: string };
  }[] = book[list];
  return records
    .filter(
      ({ id, data }) =>
        id !== build[OWN[list]] && (data.retired === undefined || exchanges[list].includes(id)),
    )
    .map(({ id, data }) => {
      const isTicked = exchanges[list].includes(id);
      const ids = isTicked ? exchanges[list].filter((each) => each !== id) : [...exchanges[list], id];
      return { key: id, name: data.name, isTicked, toggled: { ...exchanges, [list]: ids } };
    });
}

/** Skirts, and none where an open propeller is there or may be tried. */
function skirtTicks(book: Book, build: Build): Tick[] {
  const { skirts } = build.exchanges;
  const isTicked = skirts.includes(null);
  const tried = [build.rotor, ...build.exchanges.rotors.map(({ rotor }) => rotor)];
  const none: Tick = {
    key: "none",
    name: "No skirt, with an open propeller",
    isTicked,
    toggled: {
      ...build.exchanges,
      skirts: isTicked ? skirts.filter((each) => each !== null) : [...skirts, null],
    },
  };
  const isShown = build.skirt !== null && (isTicked || tried.some((id) => isPropeller(book, id)));
  return [...partTicks(book, build, "skirts"), ...(isShown ? [none] : [])];
}

const isPropeller = (book: Book, id: string): boolean => findById(book.rotors, id)?.data.kind === "propeller";

function rotorTicks(book: Book, build: Build): Tick[] {
  const { exchanges } = build;
  return book.rotors.flatMap(({ id, data }) =>
    data.sizes.flatMap(({ diameter }) => {
      const isSame = (each: { rotor: string; diameter: number }) =>
        each.rotor === id && Math.abs(each.diameter - diameter) <= SAME_DIAMETER * diameter;
      const isTicked = exchanges.rotors.some(isSame);
      if (isSame(build) || (data.retired !== undefined && !isTicked)) return [];
      const rotors = isTicked
        ? exchanges.rotors.filter((each) => !isSame(each))
        : [...exchanges.rotors, { rotor: id, diameter }];
      const kind = data.kind === "propeller" ? ", open propeller" : "";
      const name = `${data.name}, ${typedText(diameter, "length", 4)}${kind}`;
      return [{ key: `${id} ${diameter}`, name, isTicked, toggled: { ...exchanges, rotors } }];
    }),
  );
}

/** Parts of the book that swaps may try in the place of the build's own, each with its own curve. */
export function PartsToTry({ book, build }: { readonly book: Book; readonly build: StoredOf<"builds"> }) {
  const [problem, setProblem] = useState<string | null>(null);
  const lists = [
    { title: "Motors", ticks: partTicks(book, build.data, "motors") },
    { title: "Rotors", ticks: rotorTicks(book, build.data) },
    { title: "Packs", ticks: partTicks(book, build.data, "packs") },
    { title: "Skirts", ticks: skirtTicks(book, build.data) },
  ].filter(({ ticks }) => ticks.length > 0);
  const ticked = lists.flatMap(({ ticks }) => ticks.filter(({ isTicked }) => isTicked)).length;
  if (lists.length === 0) return null;
  return (
    <details class="mass-parts">
      <summary>{ticked === 0 ? "Parts of the book to try" : `Parts of the book to try: ${ticked}`}</summary>
      <p class="small">
        Another motor, rotor, pack or skirt changes the pull too; each is worked out in full. An open
        propeller presses the vehicle on by its thrust, on the skirt or without one; a rotor in a duct needs
        its skirt.
      </p>
      {lists.map(({ title, ticks }) => (
        <fieldset key={title}>
          <legend>{title}</legend>
          {ticks.map(({ key, name, isTicked, toggled }) => (
            <label key={key}>
              <input
                type="checkbox"
                checked={isTicked}
                onChange={() => void saveBuild(build, { ...build.data, exchanges: toggled }).then(setProblem)}
              />{" "}
              {name}
            </label>
          ))}
        </fieldset>
      ))}
      {problem && (
        <p class="field-error" role="alert">
          {problem}
        </p>
      )}
    </details>
  );
}
