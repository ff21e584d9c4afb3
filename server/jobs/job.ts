import type { ChooseJob, ChooseRequest, JobState } from "../../shared/model/api/choose.ts";
import { Refusal } from "../refusal.ts";
import type { Solved, SolvedPiece } from "./piece.ts";
import type { SealedQuestion } from "./question.ts";
import type { Order } from "./results.ts";

type Listener = () => void;

const MILLISECONDS = 1000;
const ENDED: readonly JobState[] = ["done", "cancelled", "failed"];

/** One question on its way: what is solved of it, and who listens. */
export class Job {
  state: JobState = "queued";
  error: string | null = null;
  solved = 0;
  admissible = 0;
  /** first combination that no piece was cut from */
  next = 0;
  /** the order that a deep page was taken from, for the page behind it */
  order: Order | null = null;
  /** not 0 once it is cancelled or has failed: seen by the threads, so that pieces that wait for one are left */
  readonly stopped = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  /** pieces as they came back, in whatever order; none once the job is cancelled or failed */
  private pieces: SolvedPiece[] = [];
  private front: Uint32Array = new Uint32Array();
  private began: number | null = null;
  private ended: number | null = null;
  private readonly listeners = new Set<Listener>();
  private readonly followers = new Set<(piece: SolvedPiece) => void>();

  constructor(
    readonly request: ChooseRequest,
    readonly question: SealedQuestion,
    private readonly startedAt: Date,
    private readonly now: () => number,
  ) {}

  get id(): string {
    return this.question.id;
  }

  get count(): number {
    return this.question.count;
  }

  get isOver(): boolean {
    return ENDED.includes(this.state);
  }

  begin(): void {
    if (this.state !== "queued") return;
    this.state = "running";
    this.began = this.now();
  }

  /** Receives a solved piece. */
  receive(piece: SolvedPiece): void {
    this.pieces.push(piece);
    for (const follow of [...this.followers]) follow(piece);
    this.solved += piece.count;
    this.admissible += piece.admissible;
  }

  /** @returns every combination that was solved, whether all are or not; none where the job keeps none */
  soFar(): Omit<Solved, "front"> {
    return { question: this.question, pieces: this.pieces };
  }

  /** @returns every solved combination @throws {Refusal} 409 while the combinations are still being solved */
  results(): Solved {
    if (this.state === "done") return { ...this.soFar(), front: this.front };
    throw new Refusal(
      409,
      "not-done",
      `The search is ${this.state}; its combinations can be read once it is done.`,
    );
  }

  /** Ends it with every combination solved. @param front - combinations that no other dominates in margin, mass and time; rising */
  finish(front: Uint32Array): void {
    this.front = front;
    this.end("done");
  }

  /** Ends it before it is done: nothing is kept. */
  stop(state: "cancelled" | "failed", error: string | null = null): void {
    if (this.isOver) return;
    this.error = error;
    this.pieces = [];
    Atomics.store(this.stopped, 0, 1);
    this.end(state);
  }

  private end(state: "done" | "cancelled" | "failed"): void {
    this.state = state;
    this.ended = this.now();
    for (const listener of [...this.listeners]) listener();
    this.listeners.clear();
    this.followers.clear();
  }

  /** @returns what stops listening; the listener is called once, when the job ends */
  onEnd(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** @returns what stops following; the pieces so far are given at once, each further one as it comes back */
  onPiece(follow: (piece: SolvedPiece) => void): () => void {
    for (const piece of this.pieces) follow(piece);
    this.followers.add(follow);
    return () => this.followers.delete(follow);
  }

  report(): ChooseJob {
    const until = this.ended ?? this.now();
    return {
      id: this.id,
      state: this.state,
      sets: this.count,
      solved: this.solved,
      admissible: this.admissible,
      startedAt: this.startedAt.toISOString(),
      seconds: this.began === null ? 0 : (until - this.began) / MILLISECONDS,
      request: this.request,
      error: this.error,
      notes: [...this.question.notes],
    };
  }
}
