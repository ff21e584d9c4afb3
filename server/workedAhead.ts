import type { Stored } from "../shared/model/record.ts";
import type { Answering } from "./routes/bookAnswers.ts";
import { bookFitsText } from "./routes/bookFits.ts";
import { calibrationText } from "./routes/calibration.ts";
import { nextTestsText } from "./routes/nextTests.ts";

/** So many builds are answered for before anybody asks. */
const BUILDS = 8;
/** Between the last change and the work that follows it: what is written together is followed once [ms]. */
const QUIET = 300;

/** Builds in use, in the order that pages offer them in. */
function buildIds({ store }: Answering): string[] {
  const { items } = store.collections.builds.list({ limit: BUILDS, withdrawn: false });
  const builds: Stored<unknown>[] = JSON.parse(`[${Buffer.from(items).toString()}]`);
  return builds.map(({ id }) => id);
}

/** What a page of a build asks first: of the one that it opens with all of it, of the others what their verdict waits for. */
async function firstAnswers(service: Answering, signal: AbortSignal): Promise<void> {
  const ids = buildIds(service);
  const asked = [
    ...ids
      .slice(0, 1)
      .flatMap((id) => [
        () => calibrationText(service, id),
        () => nextTestsText(service, id, { mode: "parked" }),
      ]),
    ...ids.slice(1).map((id) => () => calibrationText(service, id)),
    () => bookFitsText(service),
  ];
  for (const ask of asked) {
    if (signal.aborted) return;
    // A build that lacks something has no answer: whoever asks is told why.
    await ask().catch(() => {});
  }
}

/**
 * Works out what the first page will ask for, and after each change what was asked before, behind the requests that pages wait for.
 *
 * @returns ends it
 */
export function workAhead(service: Answering): () => void {
  const gone = new AbortController();
  const { signal } = gone;
  let soon: ReturnType<typeof setTimeout> | undefined;
  let work = firstAnswers(service, signal);
  const follow = () => {
    work = work.then(() => service.answers.refresh(signal));
  };
  const stop = () => {
    clearTimeout(soon);
    gone.abort();
  };
  const unsubscribe = service.store.feed.subscribe({
    next: () => {
      clearTimeout(soon);
      soon = setTimeout(follow, QUIET);
    },
    end: stop,
  });
  return () => {
    unsubscribe();
    stop();
  };
}
