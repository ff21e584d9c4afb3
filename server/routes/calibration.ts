import { createHash } from "node:crypto";
import { findById } from "../../shared/book/book.ts";
import { calibrationOf, calibrationRequest } from "../../shared/book/calibration.ts";
import { calibrateResponse } from "../../shared/model/api/calibrate.ts";
import { calibrationResponse } from "../../shared/model/api/calibration.ts";
import { UnknownRecordError } from "../store/errors.ts";
import { bookIn } from "../threads/bookIn.ts";
import type { Answering, Found } from "./bookAnswers.ts";
import { only } from "./compute.ts";
import { jsonBytes } from "./jsonBytes.ts";
import type { Route } from "./route.ts";
import type { Service } from "./service.ts";
import { sendWhenDone } from "./waiting.ts";

/** A question of the book in a file. */
interface Asked {
  readonly file: string;
  readonly id: string;
  /** what an answer that is kept was worked out from */
  readonly known: string | null;
}

/** @returns the answer as bytes of JSON, unless it would be from what is known @throws {UnknownRecordError} */
export function calibrationFound({ file, id, known }: Asked): Found {
  const book = bookIn(file);
  const build = findById(book.builds, id)?.data;
  if (!build) throw new UnknownRecordError("builds", id);
  const request = calibrationRequest(book, build);
  const from = createHash("sha256").update(JSON.stringify(request)).digest("hex");
  if (from === known) return { from, text: null };
  const found = request && calibrationOf(book, build);
  const answer = found?.answer ?? null;
  const said = { request, answer: answer && only(calibrateResponse, answer), why: found?.why ?? null };
  return { from, text: jsonBytes(said) };
}

/** @returns the calibration of a build as it is kept, worked out where it isn't */
export const calibrationText = ({ store, threads, answers }: Answering, id: string): Promise<Uint8Array> =>
  answers.of(`calibration ${id}`, (known) => threads.run("calibration", { file: store.file, id, known }));

/** What pull and leak tests tell of a stored build; worked out on a thread of its own, once for what it is worked out from. */
export function calibrationRoutes(service: Service): Route[] {
  return [
    {
      method: "get",
      path: "/builds/:id/calibration",
      tag: "builds",
      summary: "Gap, friction and pull factor of a build as its pull and leak tests tell them",
      responses: { 200: { description: "with what it was worked out from", schema: calibrationResponse } },
      refusals: [404, 422, 429],
      serve: (request, response) =>
        sendWhenDone(response, () => calibrationText(service, String(request.params.id))),
    },
  ];
}
