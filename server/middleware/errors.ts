import { STATUS_CODES } from "node:http";
import type { ErrorRequestHandler } from "express";
import { type ErrorResponse, PROBLEM } from "../../shared/model/api/errors.ts";
import { Refusal } from "../refusal.ts";
import { refusalOf } from "../refusals.ts";

/** A percent sign that starts no character: express can't read such an address. */
const unreadableAddress = (error: unknown): Refusal | null =>
  error instanceof URIError ? new Refusal(400, "malformed", "The address can't be read.") : null;

/** The one error handler, last of all: known classes become their status, the rest is logged and says nothing of the inside. */
export function answerErrors(log: (error: unknown) => void): ErrorRequestHandler {
  return (thrown: unknown, _request, response, next) => {
    if (response.headersSent) {
      next(thrown);
      return;
    }
    const known = refusalOf(thrown) ?? unreadableAddress(thrown);
    if (!known) log(thrown);
    const { status, code, message, fields, headers } =
      known ?? new Refusal(500, "internal", "The server failed at this; what it was is in its log.");
    const error = { code, message, fields: [...fields] };
    const title = STATUS_CODES[status] ?? "Error";
    const body: ErrorResponse = { type: "about:blank", title, status, detail: message, error };
    response.status(status).set(headers).type(PROBLEM).json(body);
  };
}
