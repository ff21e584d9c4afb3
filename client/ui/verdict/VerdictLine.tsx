import { toneOf } from "../../../shared/decide/verdict/states.ts";
import { sentenceOf, stateWords } from "../../../shared/decide/verdict/words.ts";
import { href } from "../../app/router.ts";
import { useUncertainty } from "../../state/useUncertainty.ts";
import { useVerdict } from "../../state/verdict/useVerdict.ts";
import { bandFigures } from "./bandFigures.ts";
import { StateMark } from "./StateMark.tsx";

interface Props {
  /** id of the build on the screen */
  readonly build: string;
  /** margin that the build wants [-] */
  readonly target: number;
}

/** The verdict in one line, for a view whose own answer is another one; nothing while there is none. */
export function VerdictLine({ build, target }: Props) {
  const { verdict } = useVerdict();
  const sure = useUncertainty();
  if (!verdict) return null;
  const [first] = bandFigures(verdict, target, sure);
  return (
    <section class={`verdict-line ${toneOf(verdict.state)}-band`} aria-label="Verdict">
      <StateMark state={verdict.state} words={stateWords(verdict)} />
      <span class="verdict-line-words">{sentenceOf(verdict)}</span>
      {first && (
        <span class="verdict-line-figure">
          <strong>{first.value}</strong> <small>{first.of}</small>
        </span>
      )}
      <a href={href("match", build)}>{verdict.state === "holds" ? "Why" : "Why, and what to do"}</a>
    </section>
  );
}
