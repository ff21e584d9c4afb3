/** What a browser gives to work in another thread: {@link Worker}, or a stand-in. */
export type Thread = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror">;

/** Something to be done in another thread. */
export interface Job {
  /** plain data */
  readonly posted: unknown;
  /** of those that wait, the lowest comes first */
  readonly rank: number;
  /** called once, unless the job is given up: with the reply, or null where the thread failed */
  readonly done: (end: { readonly reply: unknown } | null) => void;
}

/**
 * One thread and what waits for it, lowest rank first, then first come, first served. The thread starts with the first job and stays for the
 * next: what it has compiled and remembered serves them too.
 */
export class Lane {
  #thread: Thread | null = null;
  #running: Job | null = null;
  readonly #waiting: Job[] = [];

  constructor(private readonly start: () => Thread) {}

  /** Starts the thread, if none runs, and posts what no reply is expected to. */
  post(ahead: unknown): void {
    this.#thread ??= this.#started();
    this.#thread.postMessage(ahead);
  }

  /** @returns what gives the job up; one under way ends the thread with it, so that nobody waits for what nobody wants */
  ask(job: Job): () => void {
    this.#waiting.push(job);
    this.#next();
    return () => this.#giveUp(job);
  }

  #next(): void {
    if (this.#running) return;
    const [job] = this.#waiting.splice(this.#foremost(), 1);
    if (!job) return;
    this.#running = job;
    this.post(job.posted);
  }

  #foremost(): number {
    const ranks = this.#waiting.map(({ rank }) => rank);
    return Math.max(0, ranks.indexOf(Math.min(...ranks)));
  }

  #started(): Thread {
    const thread = this.start();
    thread.onmessage = ({ data }: MessageEvent<unknown>) => this.#end({ reply: data });
    thread.onerror = () => {
      this.#drop();
      this.#end(null);
    };
    return thread;
  }

  #end(end: { readonly reply: unknown } | null): void {
    const job = this.#running;
    this.#running = null;
    job?.done(end);
    this.#next();
  }

  #giveUp(job: Job): void {
    const place = this.#waiting.indexOf(job);
    if (place >= 0) this.#waiting.splice(place, 1);
    if (this.#running !== job) return;
    this.#drop();
    this.#running = null;
    this.#next();
  }

  /** A thread that failed, or works for nobody, is not asked again. */
  #drop(): void {
    this.#thread?.terminate();
    this.#thread = null;
  }
}
