import type { z } from "zod";
import { findById } from "../../shared/book/book.ts";
import { buildSeries } from "../../shared/book/size/buildSeries.ts";
import { printSeriesQuery, printSeriesResponse } from "../../shared/model/api/printSeries.ts";
import { UnknownRecordError } from "../store/errors.ts";
import type { Store } from "../store/store.ts";
import { bookIn } from "../threads/bookIn.ts";
import type { Threads } from "../threads/threads.ts";
import { jsonBytes } from "./jsonBytes.ts";
import { parsed, type Route } from "./route.ts";
import { sendWhenDone } from "./waiting.ts";

/** A question of the book in a file. */
interface Asked {
  readonly file: string;
  readonly id: string;
  readonly query: z.output<typeof printSeriesQuery>;
}

/** @returns the answer as bytes of JSON @throws {UnknownRecordError} {OutOfRangeError} {NotEnoughDataError} */
export function printSeriesText({ file, id, query }: Asked): Uint8Array {
  const book = bookIn(file);
  const build = findById(book.builds, id)?.data;
  if (!build) throw new UnknownRecordError("builds", id);
  const { rotor, angle, mode, margin = build.targetMargin, from, to } = query;
  const { least, ...series } = buildSeries(book, build, { rotor, hold: { angle, mode, margin }, from, to });
  const best = least && { diameter: least.diameter, packPower: least.packPower };
  return jsonBytes({ ...series, least: best });
}

/** Which sizes to print and test next, for a stored build; worked out on a thread of its own. */
export function printSeriesRoutes({ file }: Store, threads: Threads): Route[] {
  return [
    {
      method: "get",
      path: "/builds/:id/print-series",
      tag: "builds",
      summary: "The sizes of a rotor or propeller most worth printing and testing next, for a build's need",
      query: printSeriesQuery,
      responses: { 200: { description: "greatest cut first", schema: printSeriesResponse } },
      refusals: [404, 422, 429],
      serve: (request, response) => {
        const query = parsed(printSeriesQuery, request.query);
        const asked = { file, id: String(request.params.id), query };
        return sendWhenDone(response, (signal) => threads.run("printSeries", asked, { signal }));
      },
    },
  ];
}
