import type { ErrorRequestHandler } from "express";
import { UnusablePartsError } from "../../shared/book/choose/refusal.ts";
import { TooManySetsError } from "../../shared/decide/choose/count.ts";
import type { ErrorResponse, FieldError } from "../../shared/model/api/errors.ts";
import { NoConvergenceError, NotEnoughDataError, OutOfRangeError } from "../../shared/numeric/errors.ts";
import { TooManyJobsError, UnknownJobError } from "../jobs/jobs.ts";
import { Refusal } from "../refusal.ts";
import { CursorError } from "../store/cursor.ts";
import { type DiskTrouble, diskTroubleOf } from "../store/diskTrouble.ts";
import {
  ChangedMeanwhileError,
  InUseError,
  NotEmptyError,
  UnknownPartError,
  UnknownRecordError,
} from "../store/errors.ts";
import { LockedError } from "../store/patience.ts";
import { NotFiniteError } from "./finite.ts";

/** What express's own body reader says of a body that it refuses. */
interface BodyError extends Error {
  readonly status: number;
  readonly type: string;
  readonly limit?: number;
}

const isBodyError = (error: unknown): error is BodyError =>
  error instanceof Error && "status" in error && "type" in error;

function bodyRefusal(error: BodyError): Refusal {
  if (error.type === "entity.too.large") {
    return new Refusal(413, "too-large", `The body is too large; allowed: at most ${error.limit} bytes.`);
  }
  return new Refusal(error.status, error.type.replaceAll(".", "-"), error.message);
}

const one = (path: string, message: string): FieldError[] => [{ path, message }];

/** Classes of the store, by the status that they mean. */
function storeRefusal(error: unknown): Refusal | null {
  if (error instanceof UnknownRecordError) return new Refusal(404, error.code, error.message);
  if (error instanceof CursorError)
    return new Refusal(400, error.code, error.message, one("cursor", error.message));
  if (error instanceof InUseError) return new Refusal(409, error.code, error.message, error.fields);
  if (error instanceof NotEmptyError) return new Refusal(409, error.code, error.message);
  if (error instanceof ChangedMeanwhileError) return new Refusal(412, error.code, error.message);
  if (error instanceof UnknownPartError) {
    const [first] = error.fields;
    return new Refusal(422, error.code, `${first.path}: ${first.message}`, error.fields);
  }
  return null;
}

const DISK_REFUSALS: Readonly<Record<DiskTrouble, Refusal>> = {
  "disk-full": new Refusal(
    507,
    "disk-full",
    "The disk is full: nothing was stored, nothing that was stored changed. Free some space, then save again.",
  ),
  "read-only": new Refusal(
    503,
    "read-only",
    "The data file can't be written to: it or its folder is read-only. Nothing was stored. Allow writing, then save again.",
  ),
};

/** What the disk, or another program that holds the data file, doesn't let through. */
function diskRefusal(error: unknown): Refusal | null {
  if (error instanceof LockedError)
    return new Refusal(503, error.code, error.message, [], { "Retry-After": "5" });
  const trouble = diskTroubleOf(error);
  return trouble && DISK_REFUSALS[trouble];
}

/** Classes of choosing. */
function chooseRefusal(error: unknown): Refusal | null {
  if (error instanceof UnknownJobError) return new Refusal(404, error.code, error.message);
  if (error instanceof TooManyJobsError) return new Refusal(409, error.code, error.message);
  if (error instanceof UnusablePartsError) return new Refusal(422, error.code, error.message, error.fields);
  if (error instanceof TooManySetsError)
    return new Refusal(422, error.code, error.message, one(error.admissions[0].name, error.need));
  return null;
}

/** Classes of the science: the request was well formed, but it has no answer. */
function scienceRefusal(error: unknown): Refusal | null {
  if (error instanceof OutOfRangeError) {
    const message = `Read ${error.value}; allowed: ${error.allowed}.`;
    return new Refusal(422, error.code, `${error.quantity}: ${message}`, one(error.quantity, message));
  }
  if (error instanceof NotEnoughDataError)
    return new Refusal(422, error.code, error.message, one(error.path, error.message));
  if (error instanceof NoConvergenceError) return new Refusal(422, error.code, error.message);
  if (error instanceof NotFiniteError) return new Refusal(422, error.code, error.message);
  return null;
}

function refusalOf(error: unknown): Refusal | null {
  if (error instanceof Refusal) return error;
  if (isBodyError(error)) return bodyRefusal(error);
  return storeRefusal(error) ?? diskRefusal(error) ?? chooseRefusal(error) ?? scienceRefusal(error);
}

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
