import { UnusablePartsError } from "../shared/book/choose/refusal.ts";
import { TooManyCombinationsError } from "../shared/decide/choose/count.ts";
import type { FieldError } from "../shared/model/api/errors.ts";
import { NoConvergenceError, NotEnoughDataError, OutOfRangeError } from "../shared/numeric/errors.ts";
import { NotFiniteError } from "./finite.ts";
import { TooManyJobsError, UnknownJobError } from "./jobs/errors.ts";
import { Refusal } from "./refusal.ts";
import { CursorError } from "./store/cursor.ts";
import { type DiskTrouble, diskTroubleOf } from "./store/diskTrouble.ts";
import {
  ChangedMeanwhileError,
  ContradictionError,
  InUseError,
  NotDeletedError,
  NotEmptyError,
  UnknownPartError,
  UnknownRecordError,
} from "./store/errors.ts";
import { LockedError } from "./store/patience.ts";
import { KeyReusedError } from "./store/sentBefore.ts";
import { TooBusyError } from "./threads/threads.ts";

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

/** When to ask again [s]. */
const SOON = "2";

const one = (path: string, message: string): FieldError[] => [{ path, message }];

/** Classes of the store, by the status that they mean. */
function storeRefusal(error: unknown): Refusal | null {
  if (error instanceof UnknownRecordError) return new Refusal(404, error.code, error.message);
  if (error instanceof CursorError)
    return new Refusal(400, error.code, error.message, one("cursor", error.message));
  if (error instanceof InUseError) return new Refusal(409, error.code, error.message, error.fields);
  if (error instanceof NotEmptyError || error instanceof NotDeletedError)
    return new Refusal(409, error.code, error.message);
  if (error instanceof KeyReusedError) return new Refusal(422, error.code, error.message);
  if (error instanceof ChangedMeanwhileError) return new Refusal(412, error.code, error.message);
  if (error instanceof UnknownPartError || error instanceof ContradictionError) {
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

/** Classes of choosing and of other long work. */
function workRefusal(error: unknown): Refusal | null {
  if (error instanceof UnknownJobError) return new Refusal(404, error.code, error.message);
  if (error instanceof TooManyJobsError) return new Refusal(409, error.code, error.message);
  if (error instanceof UnusablePartsError) return new Refusal(422, error.code, error.message, error.fields);
  if (error instanceof TooManyCombinationsError)
    return new Refusal(422, error.code, error.message, one(error.lists[0].name, error.need));
  if (error instanceof TooBusyError)
    return new Refusal(429, error.code, error.message, [], { "Retry-After": SOON });
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

/** @returns what an error of a known class means to whoever asked; null on any other */
export function refusalOf(error: unknown): Refusal | null {
  if (error instanceof Refusal) return error;
  if (isBodyError(error)) return bodyRefusal(error);
  return storeRefusal(error) ?? diskRefusal(error) ?? workRefusal(error) ?? scienceRefusal(error);
}
