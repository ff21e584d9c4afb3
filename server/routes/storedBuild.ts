import { type Book, findById } from "../../shared/book/book.ts";
import type { Resolved } from "../../shared/book/resolve/resolved.ts";
import { resolveBuild, solvable } from "../../shared/book/resolve.ts";
import type { Build } from "../../shared/model/build.ts";
import type { AnyPredictInput } from "../../shared/physics/predictAny.ts";
import { Refusal } from "../refusal.ts";
import { UnknownRecordError } from "../store/errors.ts";

/** A build of the book with its numbers, SI. */
interface StoredBuild {
  readonly build: Build;
  readonly resolved: Resolved;
  readonly input: AnyPredictInput;
}

/**
 * A stored build made into numbers.
 *
 * @param so - what follows where it has none: "so nothing is uncertain"
 * @throws {UnknownRecordError} of an unknown build
 * @throws {Refusal} 422, naming what a build without numbers lacks
 */
export function storedBuild(book: Book, id: string, so: string): StoredBuild {
  const build = findById(book.builds, id)?.data;
  if (!build) throw new UnknownRecordError("builds", id);
  const resolved = resolveBuild(book, build);
  const input = solvable(resolved);
  if (input) return { build, resolved, input };
  const fields = resolved.missing.map(({ path, message }) => ({ path, message }));
  const message = `The build has no numbers yet, ${so}: ${fields.map((field) => field.message).join(" ")}`;
  throw new Refusal(422, "not-enough-data", message, fields);
}
