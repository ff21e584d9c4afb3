import { useState } from "preact/hooks";
import type { Build } from "../../shared/model/build.ts";
import { navigate, stayer, type ViewName } from "../app/router.ts";
import { ApiError } from "./api.ts";
import { notice } from "./notice.ts";
import { type Saving, saveRecord } from "./saveRecord.ts";
import { saveProblem } from "./sendRecord.ts";

/** Longest name of a build [letters]. */
const MOST_LETTERS = 120;

/** @returns a build's name with what sets a new one off from it, cut to what a name may have */
export const nameWith = (name: string, ending: string): string =>
  `${name.slice(0, MOST_LETTERS - ending.length)}${ending}`;

/** What happens beside storing a build. */
interface Beside {
  /** it was answered for: stored, discarded on the way, or it waits for the server */
  readonly answered?: () => void;
  /** it is stored, and its view is about to open */
  readonly stored?: () => void;
}

/**
 * Stores builds as new ones, and opens the last in a view unless its maker went elsewhere meanwhile.
 *
 * @param view - where a stored build is opened
 * @returns what is wrong, in words; what is being sent; what stores a build
 */
export function useNewBuild(view: ViewName) {
  const [problem, setProblem] = useState<string | null>(null);
  const [sending, setSending] = useState<Saving<Build> | null>(null);
  const make = async (data: Build, { answered, stored }: Beside = {}) => {
    const under = saveRecord<Build>("builds", null, { ...data });
    setSending(under);
    const isHere = stayer();
    try {
      const saved = await under.outcome;
      answered?.();
      if (!(saved && "stored" in saved && isHere())) return;
      stored?.();
      navigate(view, saved.stored.id);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      const why = error.field("name") ?? saveProblem(error, true);
      if (!isHere()) notice.value = `The build “${data.name}” was not saved. ${why}`;
      setProblem(why);
    } finally {
      setSending(null);
    }
  };
  return { problem, setProblem, sending, make };
}
