import { useMemo, useState } from "preact/hooks";
import type { SwapAim, SwapSet } from "../../../../shared/decide/swaps/swaps.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { href, navigate, stayer } from "../../../app/router.ts";
import { ApiError } from "../../../state/api.ts";
import { notice } from "../../../state/notice.ts";
import { saveProblem, sendRecord } from "../../../state/sendRecord.ts";
import { useWorker } from "../../../state/useWorker.ts";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { SelectField } from "../../../ui/Field.tsx";
import { Problem } from "../../../ui/Problem.tsx";
import type { Headroom } from "../headroom.ts";
import type { Reply } from "./answer.ts";
import { type SwapQuestion, swapped, swapQuestion, withoutNeedless } from "./question.ts";
import { setFigures, shortfallText, swapTexts } from "./swapWords.ts";

const FAILED: Reply = { problem: "The swaps could not be worked out in this browser; reload the page." };
const startWorker = () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
const SHOWN = 3;
const MOST_LETTERS = 120;

const AIMS: readonly { readonly value: SwapAim; readonly label: string }[] = [
  { value: "price", label: "the cheapest" },
  { value: "leadTime", label: "the soonest" },
  { value: "count", label: "the fewest swaps" },
];

export interface SwapsProps {
  readonly of: Headroom;
  readonly build: StoredOf<"builds">;
}

/** Which swaps make the build light enough on every attitude, found exactly. */
export function Swaps({ of, build }: SwapsProps) {
  const [by, setBy] = useState<SwapAim>("price");
  const question = useMemo(() => swapQuestion(of, build.data, by), [of, build, by]);
  const { reply, asked, busy } = useWorker<SwapQuestion, Reply>(startWorker, question, FAILED);
  return (
    <section class="mass-swaps" aria-label="Swaps" aria-busy={busy && question !== null}>
      <h2>Swaps</h2>
      {question === null ? (
        <p>
          Give a line what it may be exchanged for (<q>change</q>), and the swaps that make the build light
          enough are found here.
        </p>
      ) : (
        <>
          <SelectField
            label="Show first"
            value={by}
            options={AIMS}
            onChange={(value) => setBy(AIMS.find((aim) => aim.value === value)?.value ?? "price")}
          />
          {reply && "problem" in reply && <Problem message={reply.problem} />}
          {reply && asked && "answered" in reply && (
            <Found
              question={asked}
              build={build.data}
              sets={reply.answered.solutions}
              lightest={reply.answered.lightest}
            />
          )}
        </>
      )}
    </section>
  );
}

interface FoundProps {
  readonly question: SwapQuestion;
  readonly build: Build;
  readonly sets: readonly SwapSet[];
  readonly lightest: SwapSet;
}

function Found({ question, build, sets, lightest }: FoundProps) {
  const shown = withoutNeedless(sets).slice(0, SHOWN);
  if (shown.length === 0)
    return (
      <>
        <p>
          {shortfallText(question.allowed, lightest)} <a href={href("match")}>Ways to hold in Match</a> says
          which setting would close the rest.
        </p>
        <SwapOption question={question} build={build} set={lightest} />
      </>
    );
  const swaps = shown.filter(({ count }) => count > 0);
  return (
    <>
      {swaps.length < shown.length && (
        <p>
          It is light enough as it is: no swap is needed.
          {swaps.length > 0 && " These would leave more to spare:"}
        </p>
      )}
      {swaps.length > 0 && (
        <ol class="mass-sets">
          {swaps.map((set) => (
            <li key={set.choices.join()}>
              <SwapOption question={question} build={build} set={set} />
            </li>
          ))}
        </ol>
      )}
    </>
  );
}

/** One set, what it comes to, and the way to a build that has it. */
function SwapOption({
  question,
  build,
  set,
}: Omit<FoundProps, "sets" | "lightest"> & { readonly set: SwapSet }) {
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const apply = async () => {
    const ending = ", lighter";
    const name = `${build.name.slice(0, MOST_LETTERS - ending.length)}${ending}`;
    const isHere = stayer();
    setBusy(true);
    try {
      const record = await sendRecord<Build>("builds", null, { ...swapped(build, question, set), name })
        .outcome;
      if (record && isHere()) navigate("mass", record.id);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      const why = saveProblem(error, true);
      if (!isHere()) notice.value = `The build “${name}” was not saved. ${why}`;
      setProblem(why);
    } finally {
      setBusy(false);
    }
  };
  if (set.count === 0) return null;
  return (
    <>
      <ul>
        {swapTexts(build, question, set).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <p class="quiet">{setFigures(set)}</p>
      <p>
        <BusyButton type="button" busy={isBusy} onClick={() => void apply()}>
          Apply these swaps
        </BusyButton>{" "}
        <small>makes a new build</small>
      </p>
      {problem && (
        <p class="field-error" role="alert">
          {problem}
        </p>
      )}
    </>
  );
}
