import type { Response } from "express";
import type { z } from "zod";
import { readJson } from "../json.ts";
import type { Threads } from "../threads/threads.ts";
import { jsonBytes } from "./jsonBytes.ts";
import { bytesOf, parsed, type Route } from "./route.ts";
import { sendWhenDone } from "./waiting.ts";

interface Definition<B extends z.ZodType, R extends z.ZodObject> {
  readonly path: string;
  readonly summary: string;
  readonly request: B;
  readonly response: R;
  readonly compute: (request: z.output<B>) => { readonly [key in keyof R["shape"]]: unknown };
  /** whether a request takes no longer than reading it; it is then answered on the server's own thread */
  readonly isQuick?: (request: z.output<B>) => boolean;
}

/** What a route answers from its body alone: nothing is read from the book, nothing is kept. */
export interface Computation extends Omit<Definition<z.ZodType, z.ZodObject>, "compute" | "isQuick"> {
  readonly isQuick: (request: unknown) => boolean;
  /** @returns the answer as bytes of JSON */
  readonly answer: (request: unknown) => Uint8Array;
}

/** The keys that the answer's schema names; what a function knows beyond them stays inside. */
export function only(response: z.ZodObject, result: object): object {
  const known: Readonly<Record<string, unknown>> = { ...result };
  return Object.fromEntries(Object.keys(response.shape).map((key) => [key, known[key]]));
}

export function computation<B extends z.ZodType, R extends z.ZodObject>(of: Definition<B, R>): Computation {
  const { path, summary, request, response, compute, isQuick = () => false } = of;
  return {
    path,
    summary,
    request,
    response,
    isQuick: (asked) => isQuick(asked as z.output<B>),
    answer: (asked) => jsonBytes(only(response, compute(asked as z.output<B>))),
  };
}

/** A body beyond this takes long to read and check [byte]. */
const QUICK_BYTES = 4_000;

/** @returns the answer where it takes no time worth a thread; null where it does */
function answeredAtOnce(of: Computation, body: Uint8Array): Uint8Array | null {
  if (body.length > QUICK_BYTES) return null;
  const asked = parsed(of.request, readJson(body));
  return of.isQuick(asked) ? of.answer(asked) : null;
}

async function answer(of: Computation, threads: Threads, body: Uint8Array, response: Response) {
  const { path } = of;
  const atOnce = answeredAtOnce(of, body);
  await sendWhenDone(
    response,
    async (signal) => atOnce ?? threads.run("compute", { path, body }, { signal }),
  );
}

/** A route that answers from its body alone; what may take long is worked out on a thread of its own. */
export function computeRoute(of: Computation, threads: Threads): Route {
  return {
    method: "post",
    path: of.path,
    tag: "compute",
    summary: of.summary,
    body: of.request,
    takesBytes: true,
    responses: { 200: { description: "computed from the body alone", schema: of.response } },
    refusals: [422, 429],
    serve: (request, response) => answer(of, threads, bytesOf(request), response),
  };
}
