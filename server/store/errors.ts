import type { FieldError } from "../../shared/model/api/errors.ts";
import { COLLECTION_WORDS, type CollectionName } from "../../shared/model/collections.ts";

/** No record of that collection has the id. */
export class UnknownRecordError extends Error {
  readonly code = "not-found";
  constructor(
    readonly collection: CollectionName,
    readonly id: string,
  ) {
    super(`There is no "${id}" among the ${collection}.`);
    this.name = "UnknownRecordError";
  }
}

/** A record that is in the book can't come back into it. */
export class NotDeletedError extends Error {
  readonly code = "not-deleted";
  constructor(
    readonly collection: CollectionName,
    readonly id: string,
  ) {
    super(`"${id}" is among the ${collection}: only what was deleted can come back.`);
    this.name = "NotDeletedError";
  }
}

/** The record was changed since the writer last read it. */
export class ChangedMeanwhileError extends Error {
  readonly code = "changed-meanwhile";
  constructor(
    readonly expected: string,
    readonly found: number,
  ) {
    super(
      `The record was changed meanwhile: If-Match is ${expected}, the book has revision ${found}. Read it again, then repeat the change.`,
    );
    this.name = "ChangedMeanwhileError";
  }
}

/** A record that points to another. */
export interface User {
  readonly collection: CollectionName;
  readonly id: string;
  readonly name: string;
}

const NAMED_IN_MESSAGE = 5;

/** A record can't go while others point to it. */
export class InUseError extends Error {
  readonly code = "in-use";
  readonly fields: FieldError[];
  constructor(id: string, users: readonly User[]) {
    const named = users.slice(0, NAMED_IN_MESSAGE).map(wording);
    const more = users.length - named.length;
    super(
      `"${id}" is used by ${named.join(", ")}${more > 0 ? ` and ${more} more` : ""}; change those first.`,
    );
    this.name = "InUseError";
    this.fields = users.map((user) => ({ path: `${user.collection}.${user.id}`, message: user.name }));
  }
}

const wording = ({ collection, name, id }: User): string =>
  `the ${COLLECTION_WORDS[collection]} "${name || id}"`;

/** A record points to others that the book doesn't have. */
export class UnknownPartError extends Error {
  readonly code = "unknown-part";
  constructor(readonly fields: FieldError[]) {
    super("The book has no such part.");
    this.name = "UnknownPartError";
  }
}

/** A test and the rotor it names can't both be true. */
export class ContradictionError extends Error {
  readonly code = "contradiction";
  constructor(readonly fields: FieldError[]) {
    super("The test and its rotor contradict each other.");
    this.name = "ContradictionError";
  }
}

/** The whole book can only be loaded into an empty one. */
export class NotEmptyError extends Error {
  readonly code = "not-empty";
  constructor(remedy: string) {
    super(`The bench book is not empty. ${remedy}`);
    this.name = "NotEmptyError";
  }
}
