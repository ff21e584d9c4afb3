import type { z } from "zod";
import { judgedBuild } from "../../shared/book/judgedBuild.ts";
import { told } from "../../shared/decide/verdict/told.ts";
import { wayOutText } from "../../shared/decide/verdict/wayOutWords.ts";
import { prediction } from "../../shared/model/api/predict.ts";
import { verdictQuery, verdictResponse } from "../../shared/model/api/verdict.ts";
import type { Store } from "../store/store.ts";
import { bookIn } from "../threads/bookIn.ts";
import type { Threads } from "../threads/threads.ts";
import { only } from "./compute.ts";
import { jsonBytes } from "./jsonBytes.ts";
import { parsed, type Route } from "./route.ts";
import { storedBuild } from "./storedBuild.ts";
import { sendWhenDone } from "./waiting.ts";

/** A question of the book in a file. */
interface Asked {
  readonly file: string;
  readonly id: string;
  readonly query: z.output<typeof verdictQuery>;
}

const NO_VERDICT = "so there is no verdict";

/** @returns the answer as bytes of JSON @throws {UnknownRecordError} {Refusal} */
export function verdictText({ file, id, query: { samples } }: Asked): Uint8Array {
  const book = bookIn(file);
  const { build, resolved } = storedBuild(book, id, NO_VERDICT);
  const judged = judgedBuild(book, build, resolved, samples);
  if (!judged) throw new RangeError(`${id} has numbers and can't be judged.`);
  const { verdict, ways, ...rest } = judged;
  return jsonBytes({
    ...rest,
    verdict: told(verdict, wayOutText(verdict, ways)),
    prediction: only(prediction, judged.prediction),
  });
}

/** What the screen says of a stored build; worked out on a thread of its own. */
export function verdictRoutes({ file }: Store, threads: Threads): Route[] {
  return [
    {
      method: "get",
      path: "/builds/:id/verdict",
      tag: "builds",
      summary: "What a build comes to, by how much, how sure that is, and what it is based on",
      query: verdictQuery,
      responses: { 200: { description: "what the screen says of it", schema: verdictResponse } },
      refusals: [404, 422, 429],
      serve: (request, response) => {
        const asked = { file, id: String(request.params.id), query: parsed(verdictQuery, request.query) };
        return sendWhenDone(response, (signal) => threads.run("verdict", asked, { signal }));
      },
    },
  ];
}
