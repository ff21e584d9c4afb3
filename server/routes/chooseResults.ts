import type { Request, Response } from "express";
import { z } from "zod";
import {
  CHOOSE_COLUMNS,
  type CombinationsQuery,
  combination,
  combinationsPage,
  combinationsQuery,
  missedAnswer,
  pointsAnswer,
  pointsQuery,
  shortlistAnswer,
  shortlistQuery,
} from "../../shared/model/api/choose.ts";
import { Answers } from "../jobs/answers.ts";
import type { Jobs } from "../jobs/jobs.ts";
import type { PlainCombination } from "../jobs/results.ts";
import { jsonBytes } from "./jsonBytes.ts";
import { parsed, type Route } from "./route.ts";
import { sendPieces } from "./sendPieces.ts";
import { sendWhenDone } from "./waiting.ts";

const TAG = "choose";
/** Rows written to a table at a time, so that a slow reader does not fill the memory. */
const ROWS_AT_ONCE = 500;

const indexQuery = z.strictObject({
  index: z.coerce.number().int().min(0).max(1e9).describe("of the combination"),
});

/** Takes none. */
const noQuery = z.strictObject({});

const HEAD = ["index", "motor", "rotor", "pack", "skirt", "diameter", "gap", "duty", ...CHOOSE_COLUMNS];
const TRUST = ["basis", "scaled", "extrapolated", "onFront", "broken"];

/** Identifiers and numbers need no quotes. */
function lineOf(combination: PlainCombination): string {
  const { parts, trust, values } = combination;
  const numbers = CHOOSE_COLUMNS.map((column) => values[column] ?? "");
  const marks = [trust.basis, trust.scaled, trust.extrapolated, combination.onFront];
  const broken = combination.broken.map(({ limit }) => limit).join(" ");
  const place = [combination.index, parts.motor, parts.rotor, parts.pack, parts.skirt];
  return [
    ...place,
    combination.diameter,
    combination.gap,
    combination.duty,
    ...numbers,
    ...marks,
    broken,
  ].join(",");
}

/** Asks the results of a job. @throws {UnknownJobError} {Refusal} */
const asked = <T>(jobs: Jobs, id: string, ask: (answers: Answers) => Promise<T>): Promise<T> =>
  jobs.whileKept(id, (job) => ask(new Answers(jobs.threads, job)));

const idOf = (request: Request): string => String(request.params.id);

async function* tableOf(jobs: Jobs, id: string, query: CombinationsQuery): AsyncGenerator<string> {
  yield `${[...HEAD, ...TRUST].join(",")}\r\n`;
  for (let from = 0, total = 1; from < total; from += ROWS_AT_ONCE) {
    const rows = { ...query, from, limit: ROWS_AT_ONCE };
    const page = await asked(jobs, id, (answers) => answers.page(rows));
    total = page.total;
    yield page.combinations.map((combination) => `${lineOf(combination)}\r\n`).join("");
  }
}

async function sendTable(jobs: Jobs, request: Request, response: Response): Promise<void> {
  const query = parsed(combinationsQuery, request.query);
  const { id } = jobs.find(idOf(request)).results().question;
  response.type("text/csv; charset=utf-8").attachment(`choosing-${id}.csv`);
  if (request.method === "HEAD") {
    response.end();
    return;
  }
  await sendPieces(tableOf(jobs, id, query), response);
}

function tableRoute(jobs: Jobs): Route {
  return {
    method: "get",
    path: "/choose/:id/sets.csv",
    tag: TAG,
    summary: "Every combination of a search that is done, as a table, SI",
    query: combinationsQuery,
    responses: { 200: { description: "comma-separated, a line a combination", contentType: "text/csv" } },
    refusals: [404, 409],
    serve: (request, response) => sendTable(jobs, request, response),
  };
}

interface Reading<Q extends z.ZodType> {
  readonly path: string;
  readonly summary: string;
  readonly description: string;
  readonly schema: z.ZodType;
  readonly query: Q;
  readonly refusals?: readonly number[];
  /** the answer as bytes of JSON */
  readonly read: (answers: Answers, query: z.output<Q>, signal: AbortSignal) => Promise<Uint8Array>;
}

/** A route that reads the results of a search that is done. */
function readingRoute<Q extends z.ZodType>(jobs: Jobs, of: Reading<Q>): Route {
  return {
    method: "get",
    path: `/choose/:id/${of.path}`,
    tag: TAG,
    summary: of.summary,
    query: of.query,
    responses: { 200: { description: of.description, schema: of.schema } },
    refusals: [404, 409, 429, ...(of.refusals ?? [])],
    serve: (request, response) => {
      const query = parsed(of.query, request.query);
      return sendWhenDone(response, (signal) =>
        asked(jobs, idOf(request), (answers) => of.read(answers, query, signal)),
      );
    },
  };
}

const combinationsReading: Reading<typeof combinationsQuery> = {
  path: "sets",
  summary: "A page of the combinations, ranked by one column",
  description: "best first",
  schema: combinationsPage,
  query: combinationsQuery,
  read: async (answers, query) => {
    const { total, combinations } = await answers.page(query);
    return jsonBytes({ total, from: query.from, items: combinations });
  },
};

const combinationReading: Reading<typeof indexQuery> = {
  path: "set",
  summary: "One combination in full, with every limit that it breaks",
  description: "the combination",
  schema: combination,
  query: indexQuery,
  refusals: [422],
  read: (answers, { index }) => answers.combination(index),
};

const shortlistReading: Reading<typeof shortlistQuery> = {
  path: "shortlist",
  summary:
    "The first combinations of a ranking, with their verdicts, chance of holding and the 5 % margin: the better verdict first, of equal ones the surer",
  description: "surest first",
  schema: shortlistAnswer,
  query: shortlistQuery,
  refusals: [422],
  read: (answers, query, signal) => answers.shortlist(query, signal),
};

const pointsReading: Reading<typeof pointsQuery> = {
  path: "points",
  summary: "Points of a plot of two columns",
  description: "thinned; the front whole",
  schema: pointsAnswer,
  query: pointsQuery,
  read: (answers, query) => answers.points(query),
};

const missedReading: Reading<typeof noQuery> = {
  path: "missed",
  summary: "What keeps combinations out, and which limit to relax by how much",
  description: "by limit",
  schema: missedAnswer,
  query: noQuery,
  read: (answers) => answers.missed(),
};

/** What came out of a search: by page, as points of a plot, one combination in full, as a table. */
export function chooseResultRoutes(jobs: Jobs): Route[] {
  return [
    tableRoute(jobs),
    readingRoute(jobs, shortlistReading),
    readingRoute(jobs, pointsReading),
    readingRoute(jobs, combinationsReading),
    readingRoute(jobs, combinationReading),
    readingRoute(jobs, missedReading),
  ];
}
