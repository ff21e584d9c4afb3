import type { Response } from "express";
import { z } from "zod";
import {
  CHOOSE_COLUMNS,
  chosenSet,
  missedAnswer,
  pointsAnswer,
  pointsQuery,
  type SetsQuery,
  setsPage,
  setsQuery,
  shortlistAnswer,
  shortlistQuery,
} from "../../shared/model/api/choose.ts";
import type { Job } from "../jobs/job.ts";
import type { Jobs } from "../jobs/jobs.ts";
import { missedBy, pageOf, setOf, type ToldSet } from "../jobs/results.ts";
import { parsed, type Route, route } from "./route.ts";

const TAG = "choose";
/** Rows written to a table at a time, so that a slow reader does not fill the memory. */
const ROWS_AT_ONCE = 500;

const indexQuery = z.strictObject({
  index: z.coerce.number().int().min(0).max(1e9).describe("of the set"),
});

const HEAD = ["index", "motor", "rotor", "pack", "skirt", "diameter", "gap", "duty", ...CHOOSE_COLUMNS];
const TRUST = ["basis", "scaled", "extrapolated", "onFront", "broken"];

/** Identifiers and numbers need no quotes. */
function lineOf(set: ToldSet): string {
  const { parts, trust, values } = set;
  const numbers = CHOOSE_COLUMNS.map((column) => values[column] ?? "");
  const marks = [trust.basis, trust.scaled, trust.extrapolated, set.onFront];
  const broken = set.broken.map(({ limit }) => limit).join(" ");
  const place = [set.index, parts.motor, parts.rotor, parts.pack, parts.skirt];
  return [...place, set.diameter, set.gap, set.duty, ...numbers, ...marks, broken].join(",");
}

async function sendTable(job: Job, query: SetsQuery, response: Response): Promise<void> {
  const { total } = pageOf(job, { ...query, from: 0, limit: 1 });
  response.type("text/csv; charset=utf-8");
  response.attachment(`choosing-${job.id}.csv`);
  if (response.req.method === "HEAD") {
    response.end();
    return;
  }
  response.write(`${[...HEAD, ...TRUST].join(",")}\r\n`);
  for (let from = 0; from < total && !response.destroyed; from += ROWS_AT_ONCE) {
    const { indices } = pageOf(job, { ...query, from, limit: ROWS_AT_ONCE });
    const rows = Array.from(indices, (index) => `${lineOf(setOf(job, index))}\r\n`).join("");
    if (!response.write(rows)) await new Promise((resolve) => response.once("drain", resolve));
  }
  response.end();
}

function tableRoute(jobs: Jobs): Route {
  return {
    method: "get",
    path: "/choose/:id/sets.csv",
    tag: TAG,
    summary: "Every set of a choosing that is done, as a table, SI",
    query: setsQuery,
    responses: { 200: { description: "comma-separated, a line a set", contentType: "text/csv" } },
    refusals: [404, 409],
    serve: (request, response) =>
      sendTable(jobs.find(String(request.params.id)), parsed(setsQuery, request.query), response),
  };
}

function shortlistRoute(jobs: Jobs): Route {
  return {
    method: "get",
    path: "/choose/:id/shortlist",
    tag: TAG,
    summary: "The first sets of a ranking, with P(hold) and the 5 % margin, ranked by what is surest",
    query: shortlistQuery,
    responses: { 200: { description: "surest first", schema: shortlistAnswer } },
    refusals: [404, 409, 422],
    serve: async (request, response) => {
      const query = parsed(shortlistQuery, request.query);
      response.json(await jobs.shortlist(String(request.params.id), query));
    },
  };
}

function pointsRoute(jobs: Jobs): Route {
  return {
    method: "get",
    path: "/choose/:id/points",
    tag: TAG,
    summary: "Points of a plot of two columns",
    query: pointsQuery,
    responses: { 200: { description: "thinned; the front whole", schema: pointsAnswer } },
    refusals: [404, 409],
    serve: async (request, response) => {
      const query = parsed(pointsQuery, request.query);
      response.json(await jobs.points(String(request.params.id), query));
    },
  };
}

/** What came out of a choosing: by page, as points of a plot, one set in full, as a table. */
export function chooseResultRoutes(jobs: Jobs): Route[] {
  return [
    tableRoute(jobs),
    shortlistRoute(jobs),
    pointsRoute(jobs),
    route({
      method: "get",
      path: "/choose/:id/sets",
      tag: TAG,
      summary: "A page of the sets, ranked by one column",
      query: setsQuery,
      responses: { 200: { description: "best first", schema: setsPage } },
      refusals: [404, 409],
      answer: ({ id, query }) => {
        const job = jobs.find(id);
        const { total, indices } = pageOf(job, query);
        const items = Array.from(indices, (index) => setOf(job, index));
        return { status: 200, body: { total, from: query.from, items } };
      },
    }),
    route({
      method: "get",
      path: "/choose/:id/set",
      tag: TAG,
      summary: "One set in full, with every limit that it breaks",
      query: indexQuery,
      responses: { 200: { description: "the set", schema: chosenSet } },
      refusals: [404, 409, 422],
      answer: ({ id, query }) => ({ status: 200, body: setOf(jobs.find(id), query.index) }),
    }),
    route({
      method: "get",
      path: "/choose/:id/missed",
      tag: TAG,
      summary: "What keeps sets out, and which limit to relax by how much",
      responses: { 200: { description: "by limit", schema: missedAnswer } },
      refusals: [404, 409],
      answer: ({ id }) => ({ status: 200, body: missedBy(jobs.find(id)) }),
    }),
  ];
}
