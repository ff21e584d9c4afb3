import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Book } from "../../../shared/book/book.ts";
import type { ChooseJob } from "../../../shared/model/api/choose.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { navigate, route } from "../../app/router.ts";
import { ApiError, api } from "../../state/api.ts";
import { type Draft, draftOf, firstDraft, withoutGone } from "./form/draft.ts";
import { type ReadForm, readForm } from "./form/readForm.ts";
import { refusalsByField } from "./form/refusals.ts";
import { jobPath } from "./state/job.ts";
import { remember, remembered, shownFrom, shownQuery } from "./state/shown.ts";

export interface Asking {
  readonly draft: Draft;
  readonly read: ReadForm;
  readonly busy: boolean;
  /** what is wrong with a field: what can't be read, once it was typed or asked with; else the server's word on it */
  readonly problemAt: (key: string) => string | undefined;
  /** what is wrong with the whole */
  readonly refusal: string | null;
  readonly change: (draft: Draft) => void;
  readonly solve: (draft?: Draft) => Promise<void>;
  /** the form stands, also where the job before it is shown again */
  readonly cancel: (job: ChooseJob, before: string | null) => Promise<void>;
}

const NOTHING_REFUSED: ReadonlyMap<string, string> = new Map();
const UNREAD = "Something above can't be read; see the messages beside the fields.";

const OF_THE_FORM = /^(build|duties|motors|rotors|packs|skirts|wants)(\.|$)/;

/** What belongs to no field of the form. */
function refusalOfWhole(refused: ReadonlyMap<string, string>): string | null {
  for (const [key, message] of refused) {
    if (key === "") return message;
    if (!OF_THE_FORM.test(key)) return `${key}: ${message}`;
  }
  return null;
}

/** A new job keeps the axes of the one before; asked again, a job keeps its pins as well. */
function queryFor(id: string): Record<string, string> {
  const { id: now, query } = route.peek();
  const shown = shownFrom(query);
  return shownQuery(now === id ? shown : { ...shown, look: null, pins: [] });
}

/** The draft of the form: the one that was asked with last, else the build's; a job that was asked for elsewhere brings its own. */
function useDraft(book: Book, build: StoredOf<"builds">, job: ChooseJob | null) {
  const [draft, setDraft] = useState<Draft>(() => {
    const asked = remembered();
    return asked ? withoutGone(draftOf(asked.request), book) : firstDraft(book, build);
  });
  const [first] = useState(() => remembered()?.id ?? null);
  const own = useRef<string | null>(first);
  useEffect(() => {
    // A job that was not asked for with this form brings its own.
    if (!job || job.id === own.current) return;
    own.current = job.id;
    setDraft(withoutGone(draftOf(job.request), book));
    remember({ id: job.id, request: job.request });
  }, [job?.id]);
  return { draft, setDraft, own };
}

/** The form: what stands in it, what is wrong with it, and asking the server with it. */
export function useAsking(
  book: Book,
  build: StoredOf<"builds">,
  job: ChooseJob | null,
  onBegun: () => void,
): Asking {
  const { draft, setDraft, own } = useDraft(book, build, job);
  const [refused, setRefused] = useState(NOTHING_REFUSED);
  const [busy, setBusy] = useState(false);
  const read = useMemo(() => readForm(book, draft), [book, draft]);
  const change = (next: Draft) => {
    setRefused(NOTHING_REFUSED);
    setDraft(next);
  };
  const solve = async (next: Draft = draft) => {
    if (next !== draft) change(next);
    const { request } = next === draft ? read : readForm(book, next);
    if (!request) return setRefused(new Map([["", UNREAD]]));
    setBusy(true);
    try {
      const begun = await api.post<ChooseJob>("/choose", request);
      own.current = begun.id;
      remember({ id: begun.id, request });
      setRefused(NOTHING_REFUSED);
      navigate("choose", begun.id, queryFor(begun.id));
      onBegun();
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setRefused(refusalsByField(error.fields, error.message, request));
    } finally {
      setBusy(false);
    }
  };
  const cancel = async ({ id, request }: ChooseJob, before: string | null) => {
    own.current = before;
    remember({ id: null, request });
    try {
      await api.remove(jobPath(id));
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      if (error.status !== 404) setRefused(new Map([["", error.message]]));
    }
  };
  return {
    draft,
    read,
    busy,
    problemAt: (key) => read.problems.get(key) ?? refused.get(key),
    refusal: refusalOfWhole(refused),
    change,
    solve,
    cancel,
  };
}
