import { useState } from "preact/hooks";
import type { StoredOf } from "../../../shared/model/record.ts";
import type { Reading } from "../../charts/read/useReader.ts";
import { testName, typedRow } from "./typed.ts";

/** Which reading of which test something stands for. */
export interface Source {
  readonly testId: string;
  readonly row: number;
}

export interface Chosen {
  /** key of the reading, "test#row"; null where none is chosen */
  readonly key: string | null;
  readonly choose: (key: string) => void;
  readonly close: () => void;
  readonly test: StoredOf<"tests"> | null;
  readonly row: number;
}

/** A mark may stand for the same reading under another key, "test#row-drop". */
const READING = /^(.+)#(\d+)/;

/** @returns which reading of which test a key names; null where the key or the test is unknown */
export function readingAt(
  tests: readonly StoredOf<"tests">[],
  key: string | null,
): { test: StoredOf<"tests">; row: number } | null {
  const match = READING.exec(key ?? "");
  const test = match && tests.find((each) => each.id === match[1]);
  return match && test ? { test, row: Number(match[2]) } : null;
}

/** The reading that the user chose on one of a page's charts. */
export function useChosen(tests: readonly StoredOf<"tests">[]): Chosen {
  const [key, setKey] = useState<string | null>(null);
  const found = readingAt(tests, key);
  return {
    key,
    close: () => setKey(null),
    choose: (chosen) => setKey(READING.exec(chosen)?.[0] ?? null),
    test: found?.test ?? null,
    row: found?.row ?? 0,
  };
}

/** @returns what a reading says of itself beside the pointer: its test, then every quantity as it was typed */
export function describeReading(tests: readonly StoredOf<"tests">[], key: string): string[] {
  const found = readingAt(tests, key);
  if (!found) return [];
  const { test, row } = found;
  const reason = test.data.rows[row]?.setAside;
  return [
    `${testName(test)}, row ${row + 1}`,
    ...typedRow(test.data, row).map(({ label, text }) => `${label} ${text}`),
    ...(reason === undefined ? [] : [`set aside: ${reason}`]),
  ];
}

/** @returns how a chart of readings is read: each says what was typed, and can be chosen */
export function readingOf(chosen: Chosen, describe: (key: string) => readonly string[]): Reading {
  return {
    describe,
    label: "Readings",
    chosen: chosen.key,
    onChoose: chosen.choose,
  };
}
