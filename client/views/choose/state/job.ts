import { useEffect, useState } from "preact/hooks";
import type { ChooseJob, JobState, ToldCombinations } from "../../../../shared/model/api/choose.ts";
import { ApiError, api } from "../../../state/api.ts";
import { whileVisible } from "../../../state/whileVisible.ts";

/** What is known of the job that the address names. */
export interface Following {
  readonly job: ChooseJob | null;
  /** the server has no such job: it was cancelled, made room for newer ones, or the server began anew */
  readonly unknown: boolean;
  /** the server does not answer while the job runs */
  readonly lost: boolean;
  readonly problem: string | null;
  /** of most margin among the combinations that were told while the rest is solved */
  readonly best: BestCombination | null;
}

export type BestCombination = ToldCombinations["best"][number];

const NOTHING: Following = { job: null, unknown: false, lost: false, problem: null, best: null };
const ENDS = ["done", "cancelled", "failed"] as const satisfies readonly JobState[];
const PATIENCE_MS = 1000;

export const isOver = ({ state }: ChooseJob): boolean => ENDS.some((end) => end === state);
export const jobPath = (id: string): string => `/choose/${encodeURIComponent(id)}`;

/** Follows one job from its first report to its end, or until the page is hidden; tells each report. */
class Follower {
  private source: EventSource | null = null;
  private again: ReturnType<typeof setTimeout> | undefined;
  private ended = false;
  private best: BestCombination | null = null;

  constructor(
    private readonly id: string,
    private readonly tell: (change: Partial<Following>) => void,
  ) {
    void this.ask();
  }

  end(): void {
    this.ended = true;
    clearTimeout(this.again);
    this.source?.close();
  }

  private async ask(): Promise<void> {
    try {
      const job = await api.get<ChooseJob>(jobPath(this.id));
      if (this.ended) return;
      this.tell({ job, unknown: false, lost: false, problem: null });
      if (!isOver(job)) this.listen();
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      if (this.ended) return;
      if (error.status === 404) this.tell({ unknown: true, lost: false, problem: null });
      else if (error.status === 0) this.wait();
      else this.tell({ problem: error.message });
    }
  }

  private wait(): void {
    this.tell({ lost: true });
    this.again = setTimeout(() => void this.ask(), PATIENCE_MS);
  }

  private take({ best }: ToldCombinations): void {
    const marginOf = (combination: BestCombination | null) =>
      combination ? (combination.values.margin ?? Number.POSITIVE_INFINITY) : 0;
    const [told] = best;
    if (marginOf(told) <= marginOf(this.best)) return;
    this.best = told;
    this.tell({ best: told });
  }

  private listen(): void {
    const source = new EventSource(`/api/v1${jobPath(this.id)}/events`);
    this.source = source;
    const hear = (event: MessageEvent<string>) => {
      const job = JSON.parse(event.data) as ChooseJob;
      if (isOver(job)) source.close();
      this.tell({ job, lost: false });
    };
    source.addEventListener("sets", (event) => this.take(JSON.parse(event.data) as ToldCombinations));
    for (const name of ["progress", ...ENDS]) source.addEventListener(name, hear);
    // Asked anew rather than waited for: a server that began anew does not know the job.
    source.addEventListener("error", () => {
      source.close();
      if (!this.ended) this.wait();
    });
  }
}

/**
 * Follows the job with that identifier: its report now, then as it goes on.
 *
 * @param times - how often was asked: a job that the server forgot comes back under the same identifier
 */
export function useJob(id: string | null, times: number): Following {
  const [state, setState] = useState<{ readonly id: string | null; readonly following: Following }>({
    id,
    following: NOTHING,
  });
  useEffect(() => {
    setState({ id, following: NOTHING });
    if (id === null) return;
    const tell = (change: Partial<Following>) =>
      setState((before) => ({ id, following: { ...before.following, ...change } }));
    return whileVisible(() => {
      const follower = new Follower(id, tell);
      return () => follower.end();
    });
  }, [id, times]);
  return state.id === id ? state.following : NOTHING;
}
