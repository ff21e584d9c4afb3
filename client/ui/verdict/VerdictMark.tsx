import { stateWords } from "../../../shared/decide/verdict/words.ts";
import { current } from "../../state/build.ts";
import { useSettled } from "../../state/useSettled.ts";
import { useVerdict } from "../../state/verdict/useVerdict.ts";
import { useSaid } from "../useSaid.ts";
import { effectWords } from "./effectWords.ts";
import { StateMark } from "./StateMark.tsx";

/** The verdict on the build on the screen in a shape and a word, for beside its name, said where it changes; nothing without a build. */
export function VerdictMark() {
  // Asked for from when there is a build: asked before, its chance would be gathered ahead of the first verdict's paint.
  return current.value && <MarkOfBuild />;
}

function MarkOfBuild() {
  const { verdict } = useVerdict();
  useSaid(useSettled(verdict && effectWords(verdict)));
  return verdict ? <StateMark state={verdict.state} words={stateWords(verdict)} /> : null;
}
