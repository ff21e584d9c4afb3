import type { z } from "zod";
import { findById } from "../../shared/book/book.ts";
import { bookOfBuild } from "../../shared/book/bookOfBuild.ts";
import { fingerprint } from "../../shared/book/fingerprint.ts";
import { newestFirst } from "../../shared/book/newestFirst.ts";
import { nextTests } from "../../shared/book/nextTest/nextTests.ts";
import { nextTestsQuery, nextTestsResponse } from "../../shared/model/api/nextTests.ts";
import { predictAny } from "../../shared/physics/predictAny.ts";
import { UnknownRecordError } from "../store/errors.ts";
import { bookIn } from "../threads/bookIn.ts";
import type { Answering, Found } from "./bookAnswers.ts";
import { jsonBytes } from "./jsonBytes.ts";
import { parsed, type Route } from "./route.ts";
import type { Service } from "./service.ts";
import { storedBuild } from "./storedBuild.ts";
import { sendWhenDone } from "./waiting.ts";

type Query = z.output<typeof nextTestsQuery>;

/** A question of the book in a file. */
interface Asked {
  readonly file: string;
  readonly id: string;
  readonly query: Query;
  /** what an answer that is kept was worked out from */
  readonly known: string | null;
}

/** @returns the answer as bytes of JSON, unless it would be from what is known @throws {UnknownRecordError} {Refusal} */
export function nextTestsFound({ file, id, query: { angle, mode }, known }: Asked): Found {
  const whole = bookIn(file);
  const stored = findById(whole.builds, id);
  if (!stored) throw new UnknownRecordError("builds", id);
  const light = bookOfBuild(whole, stored.data);
  const from = fingerprint(light, [stored]);
  if (from === known) return { from, text: null };
  // In the order that a page reads the tests in: samples are drawn in it, and the page says the same to the last digit.
  const book = { ...light, tests: newestFirst(light.tests), builds: [stored] };
  const { build, input } = storedBuild(book, id, "so nothing is uncertain");
  const at = angle ?? predictAny(input, []).worst[mode].angle;
  return { from, text: jsonBytes({ angle: at, mode, from, ...nextTests(book, build, { angle: at, mode }) }) };
}

/** @returns the next tests of a build as they are kept, worked out where they aren't */
export const nextTestsText = (
  { store, threads, answers }: Answering,
  id: string,
  query: Query,
): Promise<Uint8Array> =>
  answers.of(`next tests ${id} ${query.mode} ${query.angle ?? "worst"}`, (known) =>
    threads.run("nextTests", { file: store.file, id, query, known }),
  );

/** Which bench test to do next, for a stored build; worked out on a thread of its own, once for what it is worked out from. */
export function nextTestRoutes(service: Service): Route[] {
  return [
    {
      method: "get",
      path: "/builds/:id/next-tests",
      tag: "builds",
      summary: "The bench tests that would shrink the uncertainty about a build's margin most",
      query: nextTestsQuery,
      responses: { 200: { description: "greatest cut first", schema: nextTestsResponse } },
      refusals: [404, 422, 429],
      serve: (request, response) => {
        const query = parsed(nextTestsQuery, request.query);
        return sendWhenDone(response, () => nextTestsText(service, String(request.params.id), query));
      },
    },
  ];
}
