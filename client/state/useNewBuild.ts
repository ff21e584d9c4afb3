import { useState } from "preact/hooks";
import type { Build } from "../../shared/model/build.ts";
import { navigate, stayer, type ViewName } from "../app/router.ts";
import { ApiError } from "./api.ts";
import { notice } from "./notice.ts";
import { type Sending, saveProblem, sendRecord } from "./sendRecord.ts";

/** Longest name of a build [letters]. */
const MOST_LETTERS = 120;

/** @returns a build's name with what sets a new one off from it, cut to what a name may have */
export const nameWith = (name: string, ending: string): string =>
  `${name.slice(0, MOST_LETTERS - ending.length)}${ending}`;

/** What happens beside storing a build. */
interface Beside {
  /** it was answered for: stored, or discarded on the way */
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
  const [sending, setSending] = useState<Sending<Build> | null>(null);
  const make = async (data: Build, { answered, stored }: Beside = {}) => {
    const under = sendRecord<Build>("builds", null, data);
    setSending(under);
    const isHere = stayer();
    try {
      const record = await under.outcome;
      answered?.();
      if (!(record && isHere())) return;
      stored?.();
      navigate(view, record.id);
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
