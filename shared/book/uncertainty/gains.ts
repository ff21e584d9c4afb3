import type { Effect, SharedCause } from "../../decide/shared.ts";
import type { Measured } from "../../model/parts/instrument.ts";
import type { BenchTest } from "../../model/tests/index.ts";
import { asRead } from "../../units/decimalMark.ts";
import { type Book, findById } from "../book.ts";
import type { UncertaintySource } from "./collector.ts";

/** Gain of an instrument that a test says nothing of, relative standard uncertainty [-]. Common practice, no source: docs/method/uncertainty.md, Instruments. */
const DEFAULT_GAIN: Readonly<Partial<Record<Measured, number>>> = {
  pressure: 0.01,
  flow: 0.03,
  speed: 0.005,
  current: 0.01,
  voltage: 0.005,
  load: 0.01,
  torque: 0.03,
};
/** Flow by a plate that was not calibrated, taken whole as a standard uncertainty [-]. Source: docs/method/restriction.md, Holes. */
const BARE_PLATE = 0.03;

/** Where a gain comes from, and how large it is. */
interface Gain {
  readonly name: string;
  /** relative standard uncertainty [-] */
  readonly size: number;
  readonly source: UncertaintySource;
}

const INSTRUMENT: Readonly<Partial<Record<Measured, string>>> = {
  pressure: "pressure sensor",
  flow: "flow meter",
  speed: "tachometer",
  current: "ammeter",
  voltage: "voltmeter",
  load: "scale",
  torque: "torque meter",
};

function gainOf(book: Book, test: BenchTest, measured: Measured): Gain | null {
  const key = measured === "load" && test.kind === "thrust" ? "thrust" : measured;
  const said = (test.instruments as Readonly<Record<string, unknown>>)[key];
  const words = INSTRUMENT[measured] ?? measured;
  if (typeof said === "string") {
    const part = findById(book.instruments, said)?.data;
    const size = (part?.percent ?? 0) / 100;
    return {
      name: `gain of ${said}`,
      size,
      source: { from: "stated", what: `gain of ${part?.name ?? said}`, test: null },
    };
  }
  if (said !== undefined) {
    const { percent = 0 } = said as { readonly percent?: number };
    const what = `gain of a ${words}, ${asRead(String(percent))}\u202f% as its tests state`;
    return {
      name: `gain ${measured} ${percent}`,
      size: percent / 100,
      source: { from: "stated", what, test: null },
    };
  }
  const size = DEFAULT_GAIN[measured] ?? 0;
  const what = `gain of a ${words} of which tests state nothing, ${size * 100}\u202f%`;
  return { name: `gain ${measured} default`, size, source: { from: "default", what, test: null } };
}

function plateOf(book: Book, test: BenchTest): Gain | null {
  if (!("plate" in test) || !test.plate || !("flowFrom" in test) || test.flowFrom !== "bleed-plate")
    return null;
  const { plate } = test;
  const part = typeof plate === "string" ? findById(book.plates, plate)?.data : null;
  const known = part
    ? part.dischargeCoefficient
    : (plate as { holes: { dischargeCoefficient?: number }[] }).holes
        .map((hole) => hole.dischargeCoefficient)
        .reduce((all, one) => (all === undefined || one === undefined ? undefined : one));
  const stated = part?.uncertainty.dischargeCoefficient;
  const size = known === undefined ? BARE_PLATE : stated === undefined ? 0 : stated / known;
  const name = `flow of ${typeof plate === "string" ? plate : JSON.stringify(plate)}`;
  const what = `flow of ${part?.name ?? "a plate"}${known === undefined ? ", which was not calibrated, ±\u202f3\u202f%" : ""}`;
  return {
    name,
    size,
    source: {
      from: known === undefined ? "default" : "stated",
      what,
      test: known === undefined ? "curve" : null,
    },
  };
}

/** Relative change of what a test tells, by that of each quantity it reads: number by path, and where it stands. */
export interface Response {
  readonly path: string;
  /** the number itself, for a change in proportion to it; null: the effect is on its logarithm */
  readonly value: number | null;
  readonly by: Readonly<Partial<Record<Measured | "plate", number>>>;
}

/** A gain, all that it moves, and where it comes from. */
export interface ToldGain {
  readonly cause: SharedCause;
  readonly source: UncertaintySource;
}

/** Gathers what the gains of all instruments do, over every test of a build. */
export class Gains {
  private readonly effects = new Map<string, { gain: Gain; by: Map<string, Effect> }>();
  private readonly book: Book;

  constructor(book: Book) {
    this.book = book;
  }

  /** A test's part in some numbers: its share of what told them, and how they answer to each quantity. */
  add(test: BenchTest, share: number, responses: readonly Response[]): void {
    const asked = new Set(responses.flatMap(({ by }) => Object.keys(by))) as Set<Measured | "plate">;
    for (const quantity of asked) {
      const gain = quantity === "plate" ? plateOf(this.book, test) : gainOf(this.book, test, quantity);
      if (!gain || !(gain.size > 0)) continue;
      const known = this.effects.get(gain.name) ?? { gain, by: new Map<string, Effect>() };
      this.effects.set(gain.name, known);
      for (const { path, value, by } of responses) {
        const before = known.by.get(path)?.by ?? 0;
        const added = share * gain.size * (by[quantity] ?? 0) * (value ?? 1);
        if (added !== 0) known.by.set(path, { path, by: before + added, onLogarithm: value === null });
      }
    }
  }

  /** @returns each gain that moves something */
  told(): ToldGain[] {
    return [...this.effects.values()].map(({ gain, by }) => ({
      cause: { name: gain.name, effects: [...by.values()] },
      source: gain.source,
    }));
  }
}
