import type { Combination } from "#client/views/choose/answers.ts";
import type { Draft } from "#client/views/choose/form/draft.ts";
import { firstDraft } from "#client/views/choose/form/draft.ts";
import type { Book } from "#shared/book/book.ts";
import { demoBook } from "#tests/support/demoBook.ts";

/** @returns a combination of the demo's parts, invented figures, with what a test changes */
export function exampleCombination(change: Partial<Combination> = {}): Combination {
  return {
    index: 7,
    parts: { motor: "bell-18", rotor: "swept-nine", pack: "two-cell-450", skirt: "square-lip" },
    diameter: 0.0456,
    gap: 0.0005,
    duty: 1,
    values: {
      speed: 3000,
      flow: 0.006,
      pressure: 2000,
      suction: 20,
      parked: 2.2,
      driving: 2,
      crossing: 1.8,
      windingTemperature: 363.15,
      packCurrent: 5,
      time: 240,
      keptTime: null,
      margin: 2,
      mass: 0.56,
      rotorFactor: 2.5,
      height: 0.031,
      price: 26,
    },
    trust: {
      basis: "measured",
      scaled: false,
      sizeRatio: 1,
      speedRatio: 1,
      extrapolated: false,
      coldWinding: false,
    },
    broken: [],
    onFront: false,
    ...change,
  };
}

/** @returns the demo's form as it first stands for the pane crawler */
export function demoDraft(book: Book = demoBook()): Draft {
  const build = book.builds.find(({ id }) => id === "pane-crawler");
  if (!build) throw new Error("The demo has no pane crawler.");
  return firstDraft(book, build);
}
