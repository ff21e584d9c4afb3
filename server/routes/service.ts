import type { Foretelling } from "../foretelling.ts";
import type { Jobs } from "../jobs/jobs.ts";
import type { Lan } from "../lan/lan.ts";
import type { Visitors } from "../lan/visitors.ts";
import type { Store } from "../store/store.ts";
import type { Threads } from "../threads/threads.ts";
import type { BookAnswers } from "./bookAnswers.ts";

/** What the routes stand on. */
export interface Service {
  readonly store: Store;
  readonly clock: () => Date;
  readonly threads: Threads;
  readonly jobs: Jobs;
  /** what was worked out of the book and is asked for again and again */
  readonly answers: BookAnswers;
  readonly foretelling: Foretelling;
  readonly visitors: Visitors;
  /** the local network that is served as well; null where it isn't */
  readonly lan: Lan | null;
}
