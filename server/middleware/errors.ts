import type { ErrorRequestHandler } from "express";
import type { ErrorResponse } from "../../shared/model/api/errors.ts";
import { Refusal } from "../refusal.ts";
import { refusalOf } from "../refusals.ts";

/** A percent sign that starts no character: express can't read such an address. */
const unreadableAddress = (error: unknown): Refusal | null =>
  error instanceof URIError ? new Refusal(400, "malformed", "The address can't be read.") : null;

/** The one error handler, last of all: known classes become their status, the rest is logged and says nothing of the inside. */
export function answerErrors(log: (error: unknown) => void): ErrorRequestHandler {
  return (error: unknown, _request, response, next) => {
    if (response.headersSent) {
      next(error);
      return;
    }
    const known = refusalOf(error) ?? unreadableAddress(error);
    if (!known) log(error);
    const { status, code, message, fields, headers } =
      known ?? new Refusal(500, "internal", "The server failed at this; what it was is in its log.");
    const body: ErrorResponse = { error: { code, message, fields: [...fields] } };
    response.status(status).set(headers).json(body);
  };
}
