import { batch } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";
import { type Rig, testsOfRigs } from "../../../shared/book/testsOfRigs.ts";
import { ApiError } from "../api.ts";
import { currentBook, hasTestsFor, readTestsFor } from "../book.ts";
import { notice } from "../notice.ts";
import { askForTests } from "./askers.ts";
import type { Asker } from "./read.ts";

/** @returns asks for the tests that the numbers of some rigs can rest on */
export const testsBehind =
  (rigs: readonly Rig[]): Asker =>
  (book) =>
    testsOfRigs(
      rigs,
      book.tests.map(({ data }) => data),
    );

/** Does something once the tests that it takes are here: at once where they are. Where they can't be read, it is not done, and the page says so. */
export function onceTested(asks: Asker, act: () => void): void {
  const bringAndAct = (bring: () => void) =>
    batch(() => {
      act();
      bring();
    });
  const fail = (error: unknown) => {
    if (!(error instanceof ApiError)) throw error;
    notice.value = `The tests behind it could not be read. ${error.message}`;
  };
  if (hasTestsFor(asks)) act();
  else readTestsFor(asks).then(bringAndAct, fail);
}

/** Where tests are that something on the screen takes. */
export type TestsHere = "here" | "coming" | "not-read";

/**
 * Keeps tests on the screen while a component takes them.
 *
 * @param asks - reads nothing but its book and what `key` says
 * @param key - another whenever others are asked for
 */
export function useTests(asks: Asker, key: string): TestsHere {
  const [failed, setFailed] = useState<string | null>(null);
  // what is written may bring others with it
  const book = currentBook.value;
  const isHere = hasTestsFor(asks);
  useEffect(() => askForTests(asks), [key]);
  useEffect(() => {
    if (isHere) return;
    let isLeft = false;
    readTestsFor(asks).then(
      (bring) => isLeft || bring(),
      (error: unknown) => {
        if (!(error instanceof ApiError)) throw error;
        if (!isLeft) setFailed(key);
      },
    );
    return () => {
      isLeft = true;
    };
  }, [key, isHere, book]);
  if (isHere) return "here";
  return failed === key ? "not-read" : "coming";
}
