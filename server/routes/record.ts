import { foretellAfterwards } from "../../shared/book/record/foretell.ts";
import { trackRecordOf, unforetold } from "../../shared/book/record/trackRecord.ts";
import { foretoldAfterwards, type KeptPrediction, trackRecord } from "../../shared/model/api/record.ts";
import { bookIn, owedIn, predictionsIn } from "../threads/bookIn.ts";
import { jsonBytes } from "./jsonBytes.ts";
import type { Route } from "./route.ts";
import type { Service } from "./service.ts";
import { sendWhenDone } from "./waiting.ts";

/** So many tests are predicted afterwards at a time: a calibration without each takes a second. */
const AT_A_TIME = 4;

/** How long the record waits for predictions that are still owed [ms]. */
const PATIENCE = 5_000;

/** @returns predicted against measured, as bytes of JSON */
export const recordText = ({ file }: { readonly file: string }): Uint8Array =>
  jsonBytes(trackRecordOf(bookIn(file), predictionsIn(file), owedIn(file)));

interface Afterwards {
  readonly predictions: readonly KeptPrediction[];
  readonly missing: number;
}

/** @returns predictions of some tests that none was kept of, as if they weren't there, and how many are left */
export function foretoldAfter({ file, at }: { readonly file: string; readonly at: string }): Afterwards {
  const book = bookIn(file);
  const ids = unforetold(book, predictionsIn(file), owedIn(file));
  const predictions = ids
    .slice(0, AT_A_TIME)
    .map((test) => ({ test, at, rows: foretellAfterwards(book, test) }));
  return { predictions, missing: ids.length - predictions.length };
}

/** The track record: what was predicted as each test was logged, beside what it then measured. */
export function recordRoutes({ store, clock, threads, foretelling }: Service): Route[] {
  const { file } = store;
  return [
    {
      method: "get",
      path: "/record",
      tag: "record",
      summary: "Predicted against measured, over all builds",
      responses: { 200: { description: "every reading beside its prediction", schema: trackRecord } },
      refusals: [429],
      serve: (_request, response) =>
        sendWhenDone(response, async (signal) => {
          await foretelling.settled(PATIENCE, signal);
          return threads.run("record", { file }, { signal });
        }),
    },
    {
      method: "post",
      path: "/record/predictions",
      tag: "record",
      summary: "Predict some tests afterwards that no prediction was kept of, each as if it weren't there",
      responses: {
        200: { description: "how many were predicted, how many are left", schema: foretoldAfterwards },
      },
      refusals: [429, 503, 507],
      serve: (_request, response) =>
        sendWhenDone(response, async (signal) => {
          const at = clock().toISOString();
          const { predictions, missing } = await threads.run("foretellAfterwards", { file, at }, { signal });
          store.keepAfterwards(predictions);
          return jsonBytes({ kept: predictions.length, missing });
        }),
    },
  ];
}
