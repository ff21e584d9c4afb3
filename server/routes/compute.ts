import type { z } from "zod";
import { type Route, route } from "./route.ts";

export interface Computation<B extends z.ZodType, R extends z.ZodObject> {
  readonly path: string;
  readonly summary: string;
  readonly request: B;
  readonly response: R;
  readonly compute: (request: z.output<B>) => { readonly [key in keyof R["shape"]]: unknown };
}

/** The keys that the answer's schema names; what a function knows beyond them stays inside. */
function only(response: z.ZodObject, result: object): object {
  const known: Readonly<Record<string, unknown>> = { ...result };
  return Object.fromEntries(Object.keys(response.shape).map((key) => [key, known[key]]));
}

/** A route that answers from its body alone: nothing is read from the book, nothing is kept. */
export function computeRoute<B extends z.ZodType, R extends z.ZodObject>(of: Computation<B, R>): Route {
  return route({
    method: "post",
    path: of.path,
    tag: "compute",
    summary: of.summary,
    body: of.request,
    responses: { 200: { description: "computed from the body alone", schema: of.response } },
    refusals: [422],
    answer: ({ body }) => ({ status: 200, body: only(of.response, of.compute(body)) }),
  });
}
