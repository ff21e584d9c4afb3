import { useEffect, useRef, useState } from "preact/hooks";
import type { Build } from "../../../shared/model/build.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { saveBuild } from "../../state/saveBuild.ts";
import { Status } from "../../ui/Status.tsx";
import { type Removal, removal, removalQuestion, removedText, undone } from "./removal.ts";

/** The one that takes out, and puts back, a build's own attitudes. */
export interface Remover {
  /** place of the attitude that is asked about; null where none is */
  readonly asked: number | null;
  /** the last one that went, until it is put back */
  readonly gone: Removal | null;
  readonly problem: string | null;
  readonly ask: (at: number | null) => void;
  readonly remove: () => Promise<void>;
  readonly undo: () => Promise<void>;
}

/** @returns what takes attitudes out of a build, each after a question and with a way back */
export function useRemover(build: StoredOf<"builds">): Remover {
  const [name, setName] = useState<string | null>(null);
  const [gone, setGone] = useState<Removal | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  // by its name: the build may change meanwhile, here or elsewhere
  const place = build.data.attitudes.findIndex((each) => each.name === name);
  const asked = place < 0 ? null : place;
  const store = async (data: Build, next: Removal | null) => {
    const refused = await saveBuild(build, data);
    setProblem(refused);
    if (refused !== null) return;
    setName(null);
    setGone(next);
  };
  const remove = async () => {
    if (asked === null) return;
    const next = removal(build.data, asked);
    await store(next.after, next);
  };
  const undo = async () => {
    if (!gone) return;
    const back = undone(build.data, gone);
    if ("problem" in back) setProblem(back.problem);
    else await store(back.build, null);
  };
  const ask = (at: number | null) => setName(at === null ? null : build.data.attitudes[at].name);
  return { asked, gone, problem, ask, remove, undo };
}

interface RemovalQuestionProps {
  readonly remover: Remover;
  readonly build: Build;
  /** place of the attitude among the build's own */
  readonly at: number;
}

/** Asks before an attitude goes. */
export function RemovalQuestion({ remover, build, at }: RemovalQuestionProps) {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  return (
    <div class="attitude-removal" role="alertdialog" aria-label="Remove this attitude?">
      <p>{removalQuestion(build, at)}</p>
      <button type="button" ref={first} onClick={() => void remover.remove()}>
        Remove it
      </button>{" "}
      <button type="button" onClick={() => remover.ask(null)}>
        Keep it
      </button>
    </div>
  );
}

/** What went, and the way back. */
export function RemovalNote({ remover }: { readonly remover: Remover }) {
  const { gone, problem } = remover;
  const back = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (gone) back.current?.focus();
  }, [gone]);
  return (
    <>
      {gone && (
        <Status>
          {removedText(gone)}{" "}
          <button type="button" class="plain" ref={back} onClick={() => void remover.undo()}>
            Undo
          </button>
        </Status>
      )}
      {problem && (
        <span class="field-error" role="alert">
          {problem}
        </span>
      )}
    </>
  );
}
