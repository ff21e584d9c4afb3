import { useMemo } from "preact/hooks";
import type { Rig } from "../../../../shared/book/testsOfRigs.ts";
import { currentBook } from "../../../state/book.ts";
import type { Asker } from "../../../state/tests/read.ts";
import { testsBehind, useTests } from "../../../state/tests/useTests.ts";
import type { ReadDraft } from "../record/readDraft.ts";
import { NOTHING_YET, type Running } from "./result.ts";
import { runningResult } from "./run.ts";

type Named = Readonly<Record<string, unknown>>;

const RIG_KEYS = ["rotor", "motor", "pack", "skirt", "surface", "gear"] as const;

const textOf = (named: Named, key: string): string | null => {
  const id = named[key];
  return typeof id === "string" && id !== "" ? id : null;
};

/** @returns asks for the tests that a test is held against: of the parts that it names, and of its build's */
export function testsBeside(data: object): Asker {
  const named = data as Named;
  const own: Rig = Object.fromEntries(RIG_KEYS.map((key) => [key, textOf(named, key)]));
  return (book) => {
    const build = book.builds.find(({ id }) => id === textOf(named, "build"))?.data;
    return testsBehind(build ? [own, build] : [own])(book);
  };
}

const NOT_READ =
  "Not all tests of these parts could be read: what is said here beside the readings may change with them.";

/** What a half-typed test says so far, once the tests that it is held against are here. */
export function useRunning(read: ReadDraft | null): Running {
  const book = currentBook.value;
  const data = read?.data ?? {};
  const key = [...RIG_KEYS, "build"].map((name) => textOf(data as Named, name) ?? "").join(" ");
  const tests = useTests(testsBeside(data), key);
  return useMemo(() => {
    if (!read || !book || tests === "coming") return NOTHING_YET;
    const running = runningResult(read, book);
    return tests === "here" ? running : { ...running, notes: [NOT_READ, ...running.notes] };
  }, [read, book, tests]);
}
