import { useEffect, useRef, useState } from "preact/hooks";
import type { MapQuestion } from "../../../shared/decide/map/grid.ts";
import { type MapField, type MapPart, mapOf, partsOf } from "../../../shared/decide/map/solve.ts";
import type { Solved, Task } from "./worker.ts";

/** A map as far as it is worked out. */
export interface Mapped {
  /** the last one worked out, with its question */
  readonly drawn: { readonly question: MapQuestion; readonly field: MapField } | null;
  readonly problem: string | null;
  readonly busy: boolean;
}

const THREADS = 2;
const FAILED = "The map could not be worked out in this browser; reload the page.";

/** Two threads that solve maps; the newest question waits for the one under way, those between are dropped. */
class MapThreads {
  private readonly workers: Worker[] = [];
  private id = 0;
  private under: {
    readonly question: MapQuestion;
    readonly count: number;
    readonly parts: MapPart[];
  } | null = null;
  private waiting: readonly MapQuestion[] = [];

  constructor(private readonly report: (mapped: Mapped) => void) {
    for (let i = 0; i < THREADS; i++) {
      const worker = new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
      worker.onmessage = ({ data }: MessageEvent<Solved>) => this.take(data);
      worker.onerror = () => this.fail(FAILED);
      this.workers.push(worker);
    }
  }

  /** Asks for maps one after another: a coarse one, then the fine one. */
  ask(questions: readonly MapQuestion[]): void {
    this.waiting = questions;
    if (!this.under) this.next();
  }

  end(): void {
    for (const worker of this.workers) worker.terminate();
  }

  private next(): void {
    const [question, ...rest] = this.waiting;
    this.waiting = rest;
    this.under = null;
    if (!question) return;
    const ranges = partsOf(question, THREADS);
    this.under = { question, count: ranges.length, parts: [] };
    this.id++;
    ranges.forEach((range, i) => {
      this.workers[i].postMessage({ id: this.id, question, range } satisfies Task);
    });
  }

  private fail(problem: string): void {
    this.waiting = [];
    this.under = null;
    this.id++;
    this.report({ drawn: null, problem, busy: false });
  }

  private take({ id, answer }: Solved): void {
    if (id !== this.id || !this.under) return;
    if ("problem" in answer) {
      this.fail(answer.problem);
      return;
    }
    const { question, count, parts } = this.under;
    parts.push(answer.answered);
    if (parts.length < count) return;
    const field = mapOf(question, parts);
    const busy = this.waiting.length > 0;
    this.report({ drawn: { question, field }, problem: null, busy });
    this.next();
  }
}

/** @returns the map of the last of these questions, the ones before it meanwhile; none asks nothing */
export function useMap(questions: readonly MapQuestion[]): Mapped {
  const threads = useRef<MapThreads | null>(null);
  const [mapped, setMapped] = useState<Mapped>({ drawn: null, problem: null, busy: true });
  useEffect(() => {
    const made = new MapThreads(setMapped);
    threads.current = made;
    return () => {
      threads.current = null;
      made.end();
    };
  }, []);
  useEffect(() => {
    setMapped((before) => ({ ...before, busy: questions.length > 0 }));
    threads.current?.ask(questions);
  }, [questions]);
  return mapped;
}
