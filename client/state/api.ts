import type { ErrorResponse, FieldError } from "../../shared/model/api/errors.ts";

const ROOT = "/api/v1";

/** How long a request waits for its whole answer [ms], unless it says otherwise. */
export const PATIENCE = 20_000;

/** The server's refusal, or that it gave no answer (status 0: unreachable, too late, or the request was given up). */
export class ApiError extends Error {
  constructor(
    readonly status: number,
    readonly code: string,
    message: string,
    readonly fields: readonly FieldError[] = [],
  ) {
    super(message);
    this.name = "ApiError";
  }

  /** @returns what is wrong with one field, or undefined */
  field(path: string): string | undefined {
    return this.fields.find((field) => field.path === path)?.message;
  }
}

/** How long a request may take, and what is heard of its answer. */
export interface Limits {
  /** gives the request up when it aborts */
  readonly signal?: AbortSignal;
  /** longest wait for the whole answer [ms] */
  readonly patience?: number;
  /** receives the headers of an answer that is no refusal */
  readonly heard?: (headers: Headers) => void;
}

/** A write that may be sent again. */
interface Write extends Limits {
  /** of its sender's choice: what was written under it before is answered as it was, and not written again */
  readonly key?: string;
}

interface Answer {
  readonly response: Response;
  readonly text: string;
}

function isErrorResponse(body: unknown): body is ErrorResponse {
  return typeof body === "object" && body !== null && "error" in body;
}

/** @returns the value that a text is JSON of; undefined where it is no JSON */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return undefined;
  }
}

function refusal({ response, text }: Answer): ApiError {
  const body = parsed(text);
  if (isErrorResponse(body))
    return new ApiError(response.status, body.error.code, body.error.message, body.error.fields);
  return new ApiError(response.status, "unexpected", `The server answered ${response.status}.`);
}

/** @returns what a request that got no answer failed of */
function noAnswer(error: unknown, patience: number): ApiError {
  if (error instanceof DOMException && error.name === "TimeoutError")
    return new ApiError(0, "timeout", `The server has not answered for ${patience / 1000} s.`);
  if (error instanceof DOMException && error.name === "AbortError")
    return new ApiError(0, "aborted", "The request was given up.");
  if (error instanceof TypeError)
    return new ApiError(0, "unreachable", "The server does not answer. Is it still running?");
  throw error;
}

async function reach(path: string, init: RequestInit, limits: Limits): Promise<Answer> {
  const { signal, patience = PATIENCE } = limits;
  const given = new AbortController();
  const late = setTimeout(() => given.abort(new DOMException("", "TimeoutError")), patience);
  const giveUp = () => given.abort();
  if (signal?.aborted) giveUp();
  signal?.addEventListener("abort", giveUp);
  try {
    const url = path.startsWith("/api/") ? path : ROOT + path;
    const response = await fetch(url, { ...init, signal: given.signal });
    return { response, text: await response.text() };
  } catch (error) {
    throw noAnswer(error, patience);
  } finally {
    clearTimeout(late);
    signal?.removeEventListener("abort", giveUp);
  }
}

interface Request {
  readonly body?: unknown;
  readonly revision?: number;
}

async function send<T>(
  method: string,
  path: string,
  { body, revision }: Request,
  { key, ...limits }: Write,
): Promise<T> {
  const headers: Record<string, string> = { Accept: "application/json" };
  if (body !== undefined) headers["Content-Type"] = "application/json";
  if (revision !== undefined) headers["If-Match"] = `"${revision}"`;
  if (key !== undefined) headers["Idempotency-Key"] = key;
  const init: RequestInit = {
    method,
    // A page that is gone back to would be given what its last visit read.
    cache: "no-cache",
    headers,
    body: body === undefined ? undefined : JSON.stringify(body),
  };
  const answer = await reach(path, init, limits);
  if (!answer.response.ok) throw refusal(answer);
  limits.heard?.(answer.response.headers);
  if (answer.response.status === 204) return undefined as T;
  const value = parsed(answer.text);
  if (value === undefined)
    throw new ApiError(
      answer.response.status,
      "unexpected",
      "The answer is no JSON. Does another program answer at this address?",
    );
  return value as T;
}

/** The server's JSON API. Paths are those under /api/v1 ("/builds", "/tests?limit=100"); each throws {@link ApiError}. */
export const api = {
  get: <T>(path: string, limits: Limits = {}) => send<T>("GET", path, {}, limits),
  post: <T>(path: string, body: unknown, write: Write = {}) => send<T>("POST", path, { body }, write),
  /** @param revision - the one that the record had; none where it has none */
  put: <T>(path: string, body: unknown, revision?: number, write: Write = {}) =>
    send<T>("PUT", path, { body, revision }, write),
  remove: (path: string, revision?: number, write: Write = {}) =>
    send<void>("DELETE", path, { revision }, write),
};
