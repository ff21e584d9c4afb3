import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { type Known, knownOf } from "#client/ui/partial/known.ts";
import {
  anywhereSentence,
  circumstanceText,
  frictionText,
  knownSentence,
  unknownText,
} from "#client/ui/partial/partialWords.ts";
import { unknownMarks } from "#client/ui/partial/UnknownMarks.tsx";
import type { Book } from "#shared/book/book.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { demoWithout, withoutCell, withoutFriction, withoutPower } from "#tests/support/partialBook.ts";

const plain = (text: string) => text.replace(/\s/g, " ");

function buildIn(book: Book, id: string): Build {
  const build = book.builds.find((each) => each.id === id);
  if (!build) throw new Error(`no build ${id}`);
  return build.data;
}

function known(book: Book, change: Partial<Build> = {}, id = "pane-crawler"): Known {
  const outcome = solve(book, { ...buildIn(book, id), ...change });
  expect(outcome.prediction).toBeNull();
  const reply = knownOf(outcome);
  if (!reply || "problem" in reply) throw new Error("nothing is known");
  return reply.known;
}

const heavy = (book: Book, mass: number): Partial<Build> => ({
  vehicle: { ...buildIn(book, "pane-crawler").vehicle, mass },
});

describe("what is said of a build without friction", () => {
  const book = demoWithout(withoutFriction);

  it("says the pull first, then the friction that the wall takes; claims no hold", () => {
    const said = plain(knownSentence(known(book)));
    expect(said).toMatch(
      /^It makes \d+ g of pull at \d+ Pa\. Whether it slides isn't known: parked on the wall/,
    );
    expect(said).toMatch(/needs μ of at least 0\.\d\d, 0\.\d\d for the 1\.5 × you want\.$/);
    expect(said).not.toMatch(/hold/);
  });

  it("where it is too heavy for the ceiling: says that it falls there however well it grips", () => {
    const said = plain(knownSentence(known(book, heavy(book, 1.6))));
    expect(said).toMatch(/It falls from the ceiling and the roof pane however well its wheels grip\./);
    expect(said).toMatch(/Whether it slides elsewhere isn't known: parked on the wall/);
    expect(plain(anywhereSentence(known(book, heavy(book, 1.6))))).toMatch(/no friction holds it/);
  });

  it("in Attitudes: says the friction that does it anywhere, no less than the wall's", () => {
    const said = plain(anywhereSentence(known(book)));
    expect(said).toMatch(/parked anywhere from floor to ceiling it needs μ of at least 0\.\d\d/);
  });

  it("rounds a friction up, never to one that would not do", () => {
    expect(frictionText(0.3701)).toBe("0.38");
    expect(frictionText(0.37)).toBe("0.37");
    expect(frictionText(0)).toBe("0.00");
  });

  it("with a friction tried: is the whole answer", () => {
    const { overrides } = buildIn(book, "pane-crawler");
    const tried = { ...buildIn(book, "pane-crawler"), overrides: { ...overrides, wheelFriction: 0.6 } };
    const outcome = solve(book, tried);
    expect(outcome.prediction).not.toBeNull();
    expect(knownOf(outcome)).toBeNull();
  });
});

describe("what is said of a build without λ", () => {
  const book = demoWithout(withoutPower);

  it("names the tested speed, the pull there and what it holds", () => {
    const said = plain(knownSentence(known(book)));
    expect(said).toMatch(
      /^Turned at [\d ]+ rpm as in its tests, it makes \d+ g of pull at \d+ Pa: that holds/,
    );
    expect(unknownText(known(book))).toBe("Not known: how fast the motor turns its rotor.");
  });

  it("of a propeller: names the speed once", () => {
    const of = known(book, {}, "prop-scout");
    expect(plain(knownSentence(of)).match(/rpm/g)).toHaveLength(1);
    expect(plain(circumstanceText(of, of.answer.moments[0]))).toMatch(/^At [\d ]+ rpm: \d+ g of pull\.$/);
  });
});

describe("what is said of a build without the cells' curve", () => {
  it("says that its figures stand at the cells' minimum", () => {
    const of = known(demoWithout(withoutCell));
    expect(plain(knownSentence(of))).toMatch(
      /^With its cells at their minimum of 3\.20 V under load, it makes \d+ g of pull at \d+ Pa: that holds/,
    );
    expect(unknownMarks(of).map(({ word }) => word)).toEqual(["at minimum voltage"]);
  });
});

describe("what is said of a build that lacks more", () => {
  it("names all that isn't known, and marks the figures with each that they stand on", () => {
    const of = known(demoWithout(withoutFriction, withoutPower, withoutCell));
    expect(unknownText(of)).toBe(
      "Not known: how fast the motor turns its rotor, its cells' voltage by charge and the friction of its wheels.",
    );
    expect(unknownMarks(of).map(({ word }) => word)).toEqual(["at tested speed", "friction not known"]);
  });

  it("with nothing missing: has no partial answer", () => {
    const book = demoBook();
    expect(knownOf(solve(book, buildIn(book, "pane-crawler")))).toBeNull();
  });
});
