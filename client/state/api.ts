import type { ErrorResponse, FieldError } from "../../shared/model/api/errors.ts";

const ROOT = "/api/v1";

/** The server's refusal, or that it could not be reached (status 0). */
export class ApiError extends Error {
  constructor(
    readonly status: number,
    readonly code: string,
    message: string,
    readonly fields: readonly FieldError[],
  ) {
    super(message);
    this.name = "ApiError";
  }

  /** @returns what is wrong with one field, or undefined */
  field(path: string): string | undefined {
    return this.fields.find((field) => field.path === path)?.message;
  }
}

function isErrorResponse(body: unknown): body is ErrorResponse {
  return typeof body === "object" && body !== null && "error" in body;
}

async function refusal(response: Response): Promise<ApiError> {
  const text = await response.text();
  const body: unknown = text.startsWith("{") ? JSON.parse(text) : null;
  if (isErrorResponse(body))
    return new ApiError(response.status, body.error.code, body.error.message, body.error.fields);
  return new ApiError(response.status, "unexpected", `The server answered ${response.status}.`, []);
}

async function reach(path: string, init: RequestInit): Promise<Response> {
  try {
    return await fetch(path.startsWith("/api/") ? path : ROOT + path, init);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw new ApiError(0, "unreachable", "The server does not answer. Is it still running?", []);
  }
}

async function send<T>(method: string, path: string, body?: unknown, revision?: number): Promise<T> {
  const headers: Record<string, string> = { Accept: "application/json" };
  if (body !== undefined) headers["Content-Type"] = "application/json";
  if (revision !== undefined) headers["If-Match"] = `"${revision}"`;
  const response = await reach(path, {
    method,
    // A page that is gone back to would be given what its last visit read.
    cache: "no-cache",
    headers,
    body: body === undefined ? undefined : JSON.stringify(body),
  });
  if (!response.ok) throw await refusal(response);
  if (response.status === 204) return undefined as T;
  return (await response.json()) as T;
}

/** The server's JSON API. Paths are those under /api/v1 ("/builds", "/tests?limit=100"); each throws {@link ApiError}. */
export const api = {
  get: <T>(path: string) => send<T>("GET", path),
  post: <T>(path: string, body: unknown) => send<T>("POST", path, body),
  put: <T>(path: string, body: unknown, revision: number) => send<T>("PUT", path, body, revision),
  remove: (path: string, revision?: number) => send<void>("DELETE", path, undefined, revision),
};
