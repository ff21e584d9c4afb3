import { useMemo } from "preact/hooks";
import type { InertiaBasis } from "../../../../shared/book/inertiaBasis.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import { isDestroyed } from "../../../../shared/decide/verdict/states.ts";
import { fallWorkings, powerCutWorkings } from "../../../../shared/physics/powerCutWorkings.ts";
import type { Board } from "../../../../shared/physics/working.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { useSettled } from "../../../state/useSettled.ts";
import { useVerdict } from "../../../state/verdict/useVerdict.ts";
import { useTask } from "../../../threads/useTask.ts";
import { Caution } from "../../../ui/Caution.tsx";
import { Mark } from "../../../ui/Mark.tsx";
import { boardOf } from "../../../ui/working/board.ts";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import type { Answered, Reply } from "./answer.ts";
import { inertiaOf, type Question, questionOf } from "./question.ts";
import { cutText, fallText, onText } from "./words.ts";

const FAILED: Reply = { problem: "What a power cut does could not be worked out in this browser." };

/** How the times after a cut and the fall came about, down to what turns. */
function cutBoard(
  book: Book,
  outcome: Outcome,
  { input }: Question,
  answered: Answered,
  inertia: InertiaBasis,
): Board {
  const { workings, origins } = boardOf(book, outcome);
  const { prediction, build } = outcome;
  const { fallHeight, vehicle } = build;
  const cut = prediction ? powerCutWorkings(input, prediction, answered) : [];
  const fall = fallHeight === undefined ? [] : fallWorkings(vehicle.mass, fallHeight);
  const from = "from" in inertia && inertia.from ? `Estimated: ${inertia.from}.` : "Typed in the build.";
  return {
    workings: [...cut, ...fall, ...workings],
    origins: [...origins, { symbol: "J", value: input.inertia, what: from, tests: [] }],
  };
}

/** What a power cut does, beside the height of the fall that follows it. */
export function PowerCutCaution({ book, outcome }: { readonly book: Book; readonly outcome: Outcome }) {
  const still = useSettled(outcome);
  const inertia = useMemo(() => inertiaOf(book, still), [book, still]);
  const question = useMemo(() => questionOf(inertia, still), [inertia, still]);
  const { verdict } = useVerdict();
  // Of what burns or bursts nobody says that it holds.
  const lasts = verdict !== null && !isDestroyed(verdict.state);
  const { reply } = useTask("powerCut", question, FAILED);
  const { fallHeight, vehicle } = still.build;
  const fall = fallText(vehicle.mass, fallHeight ?? null);
  if (inertia.basis === "missing")
    return (
      <Caution>
        How long it holds when the power goes isn't known. {inertia.message} {fall}
      </Caution>
    );
  if (!question || !reply) return <Caution>{fall}</Caution>;
  if ("problem" in reply)
    return (
      <Caution>
        {reply.problem} {fall}
      </Caution>
    );
  return (
    <>
      <Caution>
        {[cutText(reply.answered), fall, lasts && onText(reply.answered)].filter(Boolean).join(" ")}{" "}
        {inertia.basis === "estimated" && (
          <Mark word="estimated" title={`The inertia is estimated: ${inertia.from}. Times go with it.`} />
        )}
      </Caution>
      <ShowWorking
        listed={(title) => /^time |at the ground$/.test(title)}
        of={() => cutBoard(book, still, question, reply.answered, inertia)}
      />
    </>
  );
}
