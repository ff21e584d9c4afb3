import type { Question } from "../../shared/book/choose/problem.ts";
import type { Chunk } from "../../shared/decide/choose/columns.ts";
import type { Prepared } from "../../shared/decide/choose/prepare.ts";
import { gathered, type Results } from "../../shared/decide/choose/values.ts";
import type { ChooseJob, ChooseRequest, JobState } from "../../shared/model/api/choose.ts";

type Listener = () => void;

const MILLISECONDS = 1000;
const ENDED: readonly JobState[] = ["done", "cancelled", "failed"];

/** One question on its way: what is solved of it, and who listens. */
export class Job {
  state: JobState = "queued";
  error: string | null = null;
  solved = 0;
  admissible = 0;
  /** first set that no piece was cut from */
  next = 0;
  /** sets that no other dominates in margin, mass and time; rising */
  front: Uint32Array = new Uint32Array();
  /** pieces as they came back, in whatever order; none once the job is cancelled or failed */
  private pieces: Chunk[] = [];
  private began: number | null = null;
  private ended: number | null = null;
  private readonly listeners = new Set<Listener>();
  private readonly hearers = new Set<(piece: Chunk) => void>();

  constructor(
    readonly id: string,
    readonly request: ChooseRequest,
    readonly question: Question,
    readonly prepared: Prepared,
    private readonly startedAt: Date,
    private readonly now: () => number,
  ) {}

  get sets(): number {
    return this.prepared.count;
  }

  get isOver(): boolean {
    return ENDED.includes(this.state);
  }

  begin(): void {
    if (this.state !== "queued") return;
    this.state = "running";
    this.began = this.now();
  }

  /** Takes in a solved piece. */
  take(piece: Chunk): void {
    this.pieces.push(piece);
    for (const hear of [...this.hearers]) hear(piece);
    this.solved += piece.count;
    for (const broken of piece.broken) if (broken === 0) this.admissible += 1;
  }

  /** @returns every solved set, in order; empty where the job keeps none */
  results(): Results {
    return gathered(this.pieces);
  }

  /** Ends it; a job that was not done keeps nothing. */
  end(state: "done" | "cancelled" | "failed", error: string | null = null): void {
    if (this.isOver) return;
    this.state = state;
    this.error = error;
    this.ended = this.now();
    if (state !== "done") this.pieces = [];
    for (const listener of [...this.listeners]) listener();
    this.listeners.clear();
    this.hearers.clear();
  }

  /** @returns what stops listening; the listener is called once, when the job ends */
  onEnd(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** @returns what stops hearing; the pieces so far are told at once, each further one as it comes back */
  onPiece(hear: (piece: Chunk) => void): () => void {
    for (const piece of this.pieces) hear(piece);
    this.hearers.add(hear);
    return () => this.hearers.delete(hear);
  }

  report(): ChooseJob {
    const until = this.ended ?? this.now();
    return {
      id: this.id,
      state: this.state,
      sets: this.sets,
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
