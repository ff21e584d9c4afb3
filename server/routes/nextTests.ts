import { type Book, findById } from "../../shared/book/book.ts";
import { nextTests } from "../../shared/book/nextTest/nextTests.ts";
import { resolveBuild, solvable } from "../../shared/book/resolve.ts";
import { nextTestsQuery, nextTestsResponse } from "../../shared/model/api/nextTests.ts";
import type { Build } from "../../shared/model/build.ts";
import { type AnyPredictInput, predictAny } from "../../shared/physics/predictAny.ts";
import { Refusal } from "../refusal.ts";
import { currentBook } from "../store/currentBook.ts";
import { UnknownRecordError } from "../store/errors.ts";
import type { Store } from "../store/store.ts";
import { type Route, route } from "./route.ts";

/** @throws {Refusal} 422, naming what a build without numbers lacks */
function numbersOf(book: Book, build: Build): AnyPredictInput {
  const resolved = resolveBuild(book, build);
  const input = solvable(resolved);
  if (input) return input;
  const fields = resolved.missing.map(({ path, message }) => ({ path, message }));
  const message = `The build has no numbers yet, so nothing is in doubt: ${fields.map((field) => field.message).join(" ")}`;
  throw new Refusal(422, "not-enough-data", message, fields);
}

/** Which bench test to do next, for a stored build. */
export function nextTestRoutes(store: Store): Route[] {
  const read = currentBook(store);
  return [
    route({
      method: "get",
      path: "/builds/:id/next-tests",
      tag: "builds",
      summary: "The bench tests that would shrink the doubt about a build's margin most",
      query: nextTestsQuery,
      responses: { 200: { description: "greatest cut first", schema: nextTestsResponse } },
      refusals: [404, 422],
      answer: ({ id, query: { angle, mode } }) => {
        const book = read();
        const build = findById(book.builds, id)?.data;
        if (!build) throw new UnknownRecordError("builds", id);
        const input = numbersOf(book, build);
        const at = angle ?? predictAny(input, []).worst[mode].angle;
        return { status: 200, body: { angle: at, mode, ...nextTests(book, build, { angle: at, mode }) } };
      },
    }),
  ];
}
