import { stateWords } from "../../../shared/decide/verdict/words.ts";
import { useVerdict } from "../../state/verdict/useVerdict.ts";
import { StateMark } from "./StateMark.tsx";

/** The verdict on the build on the screen in a shape and a word, for beside its name; nothing without a build. */
export function VerdictMark() {
  const { verdict } = useVerdict();
  return verdict ? <StateMark state={verdict.state} words={stateWords(verdict)} /> : null;
}
