import type { Foretelling } from "../foretelling.ts";
import type { Jobs } from "../jobs/jobs.ts";
import type { Store } from "../store/store.ts";
import type { Threads } from "../threads/threads.ts";

/** What the routes stand on. */
export interface Service {
  readonly store: Store;
  readonly clock: () => Date;
  readonly threads: Threads;
  readonly jobs: Jobs;
  readonly foretelling: Foretelling;
}
