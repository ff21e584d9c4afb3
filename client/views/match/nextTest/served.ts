import { useEffect, useState } from "preact/hooks";
import { findById } from "../../../../shared/book/book.ts";
import { fingerprint } from "../../../../shared/book/fingerprint.ts";
import { curveTitle } from "../../../../shared/book/nextTest/curveTitle.ts";
import type { NextTests } from "../../../../shared/book/nextTest/nextTests.ts";
import type { NextTestsResponse } from "../../../../shared/model/api/nextTests.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { ApiError, api } from "../../../state/api.ts";
import { whileBookStands } from "../../../state/replaceBook.ts";
import type { Question } from "./question.ts";

/** So long the server may take until this browser works it out itself [ms]. */
const PATIENCE = 10_000;

/** Browser and server may round powers in another last digit: the worst angle then differs by far less than this [°]. */
const ROUNDING = 1e-6;

/** The server's sentences are metric. */
function inOwnUnits({ before, over, tests }: NextTests, { book, build }: Question): NextTests {
  const rotor = findById(book.rotors, build.rotor)?.data.name ?? "";
  const title = curveTitle(rotor, build.diameter);
  return { before, over, tests: tests.map((test) => (test.key === "curve" ? { ...test, title } : test)) };
}

/**
 * Asks the server for a stored build's next tests: it has worked them out before, or does so while this browser stays free.
 *
 * @param stored - the build, with nothing tried
 * @returns null without an answer, and where the server knows other records than this page shows
 */
export async function servedNextTests(
  question: Question,
  stored: StoredOf<"builds">,
  signal: AbortSignal,
): Promise<NextTests | null> {
  const { book, verdict, wanted } = question;
  const query = new URLSearchParams({ mode: verdict.mode });
  if (wanted.attitude !== "worst") query.set("angle", String(verdict.angle));
  const path = `/builds/${encodeURIComponent(stored.id)}/next-tests?${query}`;
  try {
    const answer = await api.get<NextTestsResponse>(path, {
      signal: whileBookStands(signal),
      patience: PATIENCE,
    });
    const isOfThis =
      answer.from === fingerprint(book, [stored]) && Math.abs(answer.angle - verdict.angle) <= ROUNDING;
    return isOfThis ? inOwnUnits(answer as NextTests, question) : null;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return null;
  }
}

/** What the server said of a question; null: nothing that counts. */
export interface Served {
  readonly question: Question;
  readonly found: NextTests | null;
}

/**
 * @param stored - the build that is asked about, where the server knows it as it is on the screen; null: nothing is asked of the server
 * @returns what the server said last
 */
export function useServed(question: Question | null, stored: StoredOf<"builds"> | null): Served | null {
  const [served, setServed] = useState<Served | null>(null);
  useEffect(() => {
    if (!question || !stored) return;
    const given = new AbortController();
    void servedNextTests(question, stored, given.signal).then((found) => {
      if (!given.signal.aborted) setServed({ question, found });
    });
    return () => given.abort();
  }, [question, stored]);
  return served;
}
