import type { Question } from "../../shared/book/choose/problem.ts";
import { type Chunk, chunkOver, STORED } from "../../shared/decide/choose/columns.ts";
import type { Prepared } from "../../shared/decide/choose/prepare.ts";
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
  front = new Uint32Array();
  /** all sets; null before the first piece comes back, and once the job is cancelled or failed */
  columns: Chunk | null = null;
  private began: number | null = null;
  private ended: number | null = null;
  private readonly listeners = new Set<Listener>();

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
    this.columns = chunkOver(0, this.sets);
  }

  /** Takes in a solved piece. */
  take(piece: Chunk): void {
    const { columns } = this;
    if (!columns) return;
    for (const name of STORED) columns[name].set(piece[name], piece.from);
    columns.flags.set(piece.flags, piece.from);
    columns.broken.set(piece.broken, piece.from);
    this.solved += piece.count;
    for (const broken of piece.broken) if (broken === 0) this.admissible += 1;
  }

  /** Ends it; a job that was not done keeps nothing. */
  end(state: "done" | "cancelled" | "failed", error: string | null = null): void {
    if (this.isOver) return;
    this.state = state;
    this.error = error;
    this.ended = this.now();
    if (state !== "done") this.columns = null;
    for (const listener of [...this.listeners]) listener();
    this.listeners.clear();
  }

  /** @returns what stops listening; the listener is called once, when the job ends */
  onEnd(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
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
