import { useMemo, useState } from "preact/hooks";
import { fitStacks } from "../../../../shared/book/fitUp/fitStack.ts";
import { swapped } from "../../../../shared/book/mass/buildSwaps.ts";
import { exchangedParts } from "../../../../shared/book/mass/exchange.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { PartSwapSet } from "../../../../shared/decide/swaps/partSwaps.ts";
import type { SwapAim } from "../../../../shared/decide/swaps/swaps.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { href } from "../../../app/router.ts";
import { nameWith, useNewBuild } from "../../../state/useNewBuild.ts";
import { useTask } from "../../../threads/useTask.ts";
import { BusyButton } from "../../../ui/BusyButton.tsx";
import { SelectField } from "../../../ui/Field.tsx";
import { Problem } from "../../../ui/Problem.tsx";
import { wayText } from "../../match/ways/wayWords.ts";
import type { Answered, Reply } from "./answer.ts";
import { PartsToTry } from "./PartsToTry.tsx";
import { swapQuestion, withoutNeedless } from "./question.ts";
import { setFigures, settingsText, shortfallText, swapTexts } from "./swapWords.ts";

const FAILED: Reply = { problem: "The swaps could not be worked out in this browser; reload the page." };
const SHOWN = 3;

const AIMS: readonly { readonly value: SwapAim; readonly label: string }[] = [
  { value: "price", label: "the cheapest" },
  { value: "leadTime", label: "the soonest" },
  { value: "count", label: "the fewest swaps" },
];

export interface SwapsProps {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
  /** with what is tried in Match */
  readonly shown: Build;
}

/** Which swaps make the build light enough on every attitude, found exactly. */
export function Swaps({ book, build, shown }: SwapsProps) {
  const [by, setBy] = useState<SwapAim>("price");
  const question = useMemo(() => swapQuestion(book, shown, by), [book, shown, by]);
  const { reply, asked, busy } = useTask("swaps", question, FAILED);
  return (
    <section class="mass-swaps" aria-label="Swaps" aria-busy={busy && question !== null}>
      <h2>Swaps</h2>
      {question === null ? (
        <p>
          Give a line what it may be exchanged for (<q>change</q>), or tick parts of the book, and the swaps
          that make the build light enough are found here.
        </p>
      ) : (
        <>
          <SelectField
            label="Show first"
            value={by}
            options={AIMS}
            onChange={(value) => setBy(AIMS.find((aim) => aim.value === value)?.value ?? "price")}
          />
          {reply === null && <p class="quiet">Looking for swaps…</p>}
          {reply && "problem" in reply && <Problem message={reply.problem} />}
          {reply && asked && "answered" in reply && (
            <Found book={book} answered={reply.answered} build={build.data} shown={asked.build} />
          )}
        </>
      )}
      <PartsToTry book={book} build={build} />
    </section>
  );
}

interface FoundProps {
  readonly book: Book;
  readonly answered: Answered;
  /** as it is stored */
  readonly build: Build;
  /** as it was asked about */
  readonly shown: Build;
}

function Found(props: FoundProps) {
  const { swaps, settings } = props.answered;
  const sets = withoutNeedless(swaps.solutions, swaps.ways).slice(0, SHOWN);
  const wanted = sets.filter(({ count }) => count > 0);
  return (
    <>
      {swaps.notWeighed.length > 0 && (
        <p>{`Not tried: ${swaps.notWeighed.join(", ")}. Weigh them, on their records.`}</p>
      )}
      {sets.length === 0 && (
        <>
          <p>{shortfallText(swaps.nearest)}</p>
          <SwapOption {...props} set={swaps.nearest} />
          <p>
            {settingsText(settings.map(wayText))} <a href={href("match")}>Ways to hold in Match</a> says more.
          </p>
        </>
      )}
      {wanted.length < sets.length && (
        <p>
          It is light enough as it is: no swap is needed.
          {wanted.length > 0 && " These would leave more to spare:"}
        </p>
      )}
      {wanted.length > 0 && (
        <ol class="mass-sets">
          {wanted.map((set) => (
            <li key={`${set.parts} ${set.choices.join()}`}>
              <SwapOption {...props} set={set} />
            </li>
          ))}
        </ol>
      )}
    </>
  );
}

/** Which stacks close less well with the parts of a set than they do now: null where none does. */
function housingText(book: Book, build: Build, now: Build): string | null {
  const before = fitStacks(book, now);
  const short = fitStacks(book, build).filter(
    ({ stack }, i) => stack && stack.verdict !== "closes" && stack.verdict !== before[i].stack?.verdict,
  );
  if (short.length === 0) return null;
  return `The housing may not take it: ${short.map(({ name }) => name.toLowerCase()).join(", ")} in Fit-up.`;
}

/** One set, what it comes to, and the way to a build that has it. */
function SwapOption({ book, answered, build, shown, set }: FoundProps & { readonly set: PartSwapSet }) {
  const { problem, sending, make } = useNewBuild("mass");
  const apply = () =>
    make({ ...swapped(book, build, answered.swaps, set), name: nameWith(build.name, ", lighter") });
  if (set.count === 0) return null;
  const housing =
    exchangedParts(answered.swaps.ways[set.parts]).length > 0
      ? housingText(book, swapped(book, shown, answered.swaps, set), shown)
      : null;
  return (
    <>
      <ul>
        {swapTexts(book, shown, answered.swaps, set).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <p class="quiet">{setFigures(set)}</p>
      {housing && <p>{housing}</p>}
      <p>
        <BusyButton type="button" busy={sending !== null} onClick={() => void apply()}>
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
