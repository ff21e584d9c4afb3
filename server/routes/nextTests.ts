import type { z } from "zod";
import { type Book, findById } from "../../shared/book/book.ts";
import { nextTests } from "../../shared/book/nextTest/nextTests.ts";
import { resolveBuild, solvable } from "../../shared/book/resolve.ts";
import { nextTestsQuery, nextTestsResponse } from "../../shared/model/api/nextTests.ts";
import type { Build } from "../../shared/model/build.ts";
import { type AnyPredictInput, predictAny } from "../../shared/physics/predictAny.ts";
import { Refusal } from "../refusal.ts";
import { UnknownRecordError } from "../store/errors.ts";
import type { Store } from "../store/store.ts";
import { bookIn } from "../threads/bookIn.ts";
import type { Threads } from "../threads/threads.ts";
import { jsonBytes } from "./jsonBytes.ts";
import { parsed, type Route } from "./route.ts";
import { sendWhenDone } from "./waiting.ts";

/** @throws {Refusal} 422, naming what a build without numbers lacks */
function numbersOf(book: Book, build: Build): AnyPredictInput {
  const resolved = resolveBuild(book, build);
  const input = solvable(resolved);
  if (input) return input;
  const fields = resolved.missing.map(({ path, message }) => ({ path, message }));
  const message = `The build has no numbers yet, so nothing is in doubt: ${fields.map((field) => field.message).join(" ")}`;
  throw new Refusal(422, "not-enough-data", message, fields);
}

/** A question of the book in a file. */
interface Asked {
  readonly file: string;
  readonly id: string;
  readonly query: z.output<typeof nextTestsQuery>;
}

/** @returns the answer as bytes of JSON @throws {UnknownRecordError} {Refusal} */
export function nextTestsText({ file, id, query: { angle, mode } }: Asked): Uint8Array {
  const book = bookIn(file);
  const build = findById(book.builds, id)?.data;
  if (!build) throw new UnknownRecordError("builds", id);
  const input = numbersOf(book, build);
  const at = angle ?? predictAny(input, []).worst[mode].angle;
  return jsonBytes({ angle: at, mode, ...nextTests(book, build, { angle: at, mode }) });
}

/** Which bench test to do next, for a stored build; worked out on a thread of its own. */
export function nextTestRoutes({ file }: Store, threads: Threads): Route[] {
  return [
    {
      method: "get",
      path: "/builds/:id/next-tests",
      tag: "builds",
      summary: "The bench tests that would shrink the doubt about a build's margin most",
      query: nextTestsQuery,
      responses: { 200: { description: "greatest cut first", schema: nextTestsResponse } },
      refusals: [404, 422, 429],
      serve: (request, response) => {
        const asked = { file, id: String(request.params.id), query: parsed(nextTestsQuery, request.query) };
        return sendWhenDone(response, (signal) => threads.run("nextTests", asked, { signal }));
      },
    },
  ];
}
