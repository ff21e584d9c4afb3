import { createHash } from "node:crypto";
import { deserialize, serialize } from "node:v8";
import type { Book } from "../../shared/book/book.ts";
import { bookOfBuild } from "../../shared/book/bookOfBuild.ts";
import { chooseProblem, type Question } from "../../shared/book/choose/problem.ts";
import { countCombinations } from "../../shared/decide/choose/count.ts";
import { type Prepared, prepare } from "../../shared/decide/choose/prepare.ts";
import type { ChooseRequest } from "../../shared/model/api/choose.ts";
import type { Build } from "../../shared/model/build.ts";
import type { Note } from "../../shared/physics/note.ts";
import { bookIn } from "../threads/bookIn.ts";

/** A question as threads hand it to each other: whoever works on it opens it, the others only carry it. */
export interface SealedQuestion {
  /** the same numbers have the same name */
  readonly id: string;
  readonly count: number;
  readonly notes: readonly Note[];
  /** the question itself, in memory that all threads share */
  readonly sealed: SharedArrayBuffer;
}

/** A question made ready in a thread. */
export interface OpenQuestion extends Question {
  readonly prepared: Prepared;
}

const ID_LENGTH = 24;
/** Questions made ready that a thread keeps: as many as jobs are likely to run at once. */
const KEPT = 8;
const open = new Map<string, OpenQuestion>();

/** @returns the bytes in memory that threads share */
export function shared(bytes: Uint8Array): SharedArrayBuffer {
  const memory = new SharedArrayBuffer(bytes.byteLength);
  new Uint8Array(memory).set(bytes);
  return memory;
}

/** @throws {TooManyCombinationsError} {NotEnoughDataError} {OutOfRangeError} before any work, as the engine */
export function sealed(question: Question): SealedQuestion {
  const { problem, notes } = question;
  const count = countCombinations(problem);
  const id = createHash("sha256").update(JSON.stringify(problem)).digest("hex").slice(0, ID_LENGTH);
  return { id, count, notes, sealed: shared(serialize(question)) };
}

const inTurn = <T>(list: readonly T[], i: number): T => list[i % list.length];

/** @returns the book with the tests alone that any combination's numbers can rest on: each part of a combination brings its own */
function bookOfCombinations(book: Book, base: Build, { motors, rotors, packs, skirts }: ChooseRequest): Book {
  const builds = Math.max(motors.length, rotors.length, packs.length, skirts.length);
  const kept = new Set<string>();
  for (let i = 0; i < builds; i++) {
    const { rotor } = inTurn(rotors, i);
    const { skirt } = inTurn(skirts, i);
    const build = { ...base, rotor, skirt, motor: inTurn(motors, i), pack: inTurn(packs, i) };
    for (const { id } of bookOfBuild(book, build).tests) kept.add(id);
  }
  return { ...book, tests: book.tests.filter(({ id }) => kept.has(id)), builds: [] };
}

/** @returns what a request asks of the book in a file @throws {UnusablePartsError}, and as {@link sealed} */
export function questionOf({ file, request }: { readonly file: string; readonly request: ChooseRequest }) {
  const question = chooseProblem(bookIn(file), request);
  return sealed({ ...question, book: bookOfCombinations(question.book, question.base, request) });
}

/** @returns the question with every table that its combinations share, made once in each thread */
export function opened({ id, sealed: memory }: Pick<SealedQuestion, "id" | "sealed">): OpenQuestion {
  const known = open.get(id);
  if (known) return known;
  // The deserializer reads no shared memory.
  const question = deserialize(Uint8Array.from(new Uint8Array(memory))) as Question;
  const made = { ...question, prepared: prepare(question.problem) };
  const [oldest] = open.keys();
  if (open.size >= KEPT && oldest !== undefined) open.delete(oldest);
  open.set(id, made);
  return made;
}
