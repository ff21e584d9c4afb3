import { type Tone, toneOf, type VerdictState } from "../../../shared/decide/verdict/states.ts";
import { stateName } from "../../../shared/decide/verdict/words.ts";

/** One shape a tone, so that no state stands on its colour: a ticked square, a triangle, an octagon. */
const SHAPES: Readonly<Record<Tone, { readonly outline: string; readonly sign: string }>> = {
  good: {
    outline: "M5 2h14a3 3 0 0 1 3 3v14a3 3 0 0 1-3 3H5a3 3 0 0 1-3-3V5a3 3 0 0 1 3-3z",
    sign: "M7 12.5l3.5 3.5L17 8.5",
  },
  near: { outline: "M12 2.5L22.5 21.5H1.5z", sign: "M12 9v6M12 17.5v1.5" },
  bad: { outline: "M8 2h8l6 6v8l-6 6H8l-6-6V8z", sign: "M8 8l8 8M16 8l-8 8" },
};

/** The shape of a tone; it says nothing that the word beside it doesn't. */
function Shape({ tone }: { readonly tone: Tone }) {
  const { outline, sign } = SHAPES[tone];
  return (
    <svg viewBox="0 0 24 24" class="verdict-shape" aria-hidden="true">
      <path d={outline} />
      <path d={sign} />
    </svg>
  );
}

interface Props {
  readonly state: VerdictState;
  /** the state's own name unless given */
  readonly words?: string;
}

/** A state, by shape and word. */
export function StateMark({ state, words = stateName(state) }: Props) {
  const tone = toneOf(state);
  return (
    <span class={`verdict-state ${tone}`}>
      <Shape tone={tone} />
      <span>{words}</span>
    </span>
  );
}
