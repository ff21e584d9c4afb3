import type { z } from "zod";
import { nextTests } from "../../shared/book/nextTest/nextTests.ts";
import { nextTestsQuery, nextTestsResponse } from "../../shared/model/api/nextTests.ts";
import { predictAny } from "../../shared/physics/predictAny.ts";
import type { Store } from "../store/store.ts";
import { bookIn } from "../threads/bookIn.ts";
import type { Threads } from "../threads/threads.ts";
import { jsonBytes } from "./jsonBytes.ts";
import { parsed, type Route } from "./route.ts";
import { storedBuild } from "./storedBuild.ts";
import { sendWhenDone } from "./waiting.ts";

/** A question of the book in a file. */
interface Asked {
  readonly file: string;
  readonly id: string;
  readonly query: z.output<typeof nextTestsQuery>;
}

/** @returns the answer as bytes of JSON @throws {UnknownRecordError} {Refusal} */
export function nextTestsText({ file, id, query: { angle, mode } }: Asked): Uint8Array {
  const book = bookIn(file);
  const { build, input } = storedBuild(book, id, "so nothing is uncertain");
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
      summary: "The bench tests that would shrink the uncertainty about a build's margin most",
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
