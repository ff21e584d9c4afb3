import { findById } from "../../shared/book/book.ts";
import { calibrationOf } from "../../shared/book/calibration.ts";
import { calibrateResponse } from "../../shared/model/api/calibrate.ts";
import { calibrationResponse } from "../../shared/model/api/calibration.ts";
import { UnknownRecordError } from "../store/errors.ts";
import type { Store } from "../store/store.ts";
import { bookIn } from "../threads/bookIn.ts";
import type { Threads } from "../threads/threads.ts";
import { BookAnswers } from "./bookAnswers.ts";
import { only } from "./compute.ts";
import { jsonBytes } from "./jsonBytes.ts";
import type { Route } from "./route.ts";
import { sendWhenDone } from "./waiting.ts";

/** A question of the book in a file. */
interface Asked {
  readonly file: string;
  readonly id: string;
}

/** @returns the answer as bytes of JSON @throws {UnknownRecordError} */
export function calibrationText({ file, id }: Asked): Uint8Array {
  const book = bookIn(file);
  const build = findById(book.builds, id)?.data;
  if (!build) throw new UnknownRecordError("builds", id);
  const found = calibrationOf(book, build);
  const answer = found?.answer ?? null;
  return jsonBytes({
    request: found?.request ?? null,
    answer: answer && only(calibrateResponse, answer),
    why: found?.why ?? null,
  });
}

/** What pull and leak tests tell of a stored build; worked out on a thread of its own, once for a state of the book. */
export function calibrationRoutes(store: Store, threads: Threads): Route[] {
  const answers = new BookAnswers<Uint8Array>(store);
  return [
    {
      method: "get",
      path: "/builds/:id/calibration",
      tag: "builds",
      summary: "Gap, friction and pull factor of a build as its pull and leak tests tell them",
      responses: { 200: { description: "with what it was worked out from", schema: calibrationResponse } },
      refusals: [404, 422, 429],
      serve: (request, response) => {
        const asked = { file: store.file, id: String(request.params.id) };
        return sendWhenDone(response, () => answers.of(asked.id, () => threads.run("calibration", asked)));
      },
    },
  ];
}
