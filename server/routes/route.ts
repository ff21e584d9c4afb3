import type { Request, Response } from "express";
import type { z } from "zod";
import { type Explained, explain } from "../../shared/model/api/explain.ts";
import { Refusal } from "../refusal.ts";
import { patiently } from "../store/patience.ts";
import { sendJson } from "./jsonBytes.ts";

export type Method = "get" | "post" | "put" | "delete";

/** What a route answers: a status, a body (or JSON that is ready to go out), headers beside it. */
export interface Answer {
  readonly status: number;
  readonly body?: unknown;
  readonly json?: Uint8Array;
  readonly headers?: Readonly<Record<string, string>>;
}

/** What a route is asked, as the schemas gave it. */
export interface Asked<Body, Query> {
  readonly id: string;
  readonly body: Body;
  readonly query: Query;
  readonly ifMatch: string | undefined;
  readonly idempotencyKey: string | undefined;
}

/** How an answer is documented; without a schema it has no JSON body. */
export interface Documented {
  readonly description: string;
  readonly schema?: z.ZodType;
  readonly contentType?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

/** What every route says of itself: enough to register it, to refuse other methods, and to document it. */
interface Described {
  readonly method: Method;
  /** under /api/v1, an express path */
  readonly path: string;
  readonly tag: string;
  readonly summary: string;
  /** whether the request must, or may, name the revision that it changes */
  readonly ifMatch?: "required" | "optional";
  /** whether the request may carry an Idempotency-Key */
  readonly takesKey?: boolean;
  /** only this machine may ask it, not a paired device */
  readonly thisMachineOnly?: boolean;
  /** goes out piece by piece, without an ETag */
  readonly streams?: boolean;
  readonly responses: Readonly<Record<number, Documented>>;
  /** statuses of refusals besides those that any route may give */
  readonly refusals?: readonly number[];
  /** the body is handed on as it was sent, for a thread to read */
  readonly takesBytes?: boolean;
  /** the body is written to a file as it comes in, of any size up to the limit, and its name handed on */
  readonly takesFile?: boolean;
  /** greatest body [byte], the usual limit unless given */
  readonly bodyLimit?: number;
}

export interface RouteDefinition<B extends z.ZodType, Q extends z.ZodType> extends Described {
  readonly body?: B;
  readonly query?: Q;
  readonly answer: (asked: Asked<z.output<B>, z.output<Q>>) => Answer | Promise<Answer>;
}

/** A route as the server registers it: its schemas are inside `serve`. */
export interface Route extends Described {
  readonly body?: z.ZodType;
  readonly query?: z.ZodType;
  readonly serve: (request: Request, response: Response) => void | Promise<void>;
}

/** @throws {Refusal} 400, naming each field that a schema refused */
export function refuseFields({ fields, count }: Explained): never {
  const [first] = fields;
  const more = count > 1 ? ` (and ${count - 1} more)` : "";
  const at = first.path === "" ? "The body" : first.path;
  throw new Refusal(400, "invalid", `${at}: ${first.message}${more}`, fields);
}

/** @throws {Refusal} 400, naming each field that the schema refuses */
export function parsed<S extends z.ZodType>(schema: S, input: unknown): z.output<S> {
  const result = schema.safeParse(input);
  return result.success ? result.data : refuseFields(explain(schema, result.error, input));
}

/** @returns a body as it was sent, none as no bytes */
export const bytesOf = ({ body }: Request): Uint8Array =>
  body instanceof Uint8Array ? body : new Uint8Array();

/** @returns the name of the file that a body lies in */
export const fileOf = ({ body }: Request): string => String(body);

/** A route that answers JSON from what its schemas let through (the body's before it is asked); it never sees the request itself. */
export function route<B extends z.ZodType, Q extends z.ZodType>(definition: RouteDefinition<B, Q>): Route {
  const { query, answer } = definition;
  return {
    ...definition,
    serve: async (request, response) => {
      const asked = {
        id: String(request.params.id ?? ""),
        body: request.body as z.output<B>,
        query: (query ? parsed(query, request.query) : undefined) as z.output<Q>,
        ifMatch: request.get("if-match"),
        idempotencyKey: request.get("idempotency-key"),
      };
      const {
        status,
        body: content,
        json,
        headers,
      } = await patiently(
        () => answer(asked),
        () => response.closed,
      );
      response.status(status).set(headers ?? {});
      if (json !== undefined) sendJson(response, json);
      else if (content !== undefined) response.json(content);
      else response.end();
    },
  };
}
