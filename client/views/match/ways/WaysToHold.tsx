import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { KeptReach } from "../../../../shared/decide/ways/kept.ts";
import { href } from "../../../app/router.ts";
import { changes, current, settle } from "../../../state/build.ts";
import { changesToQuery } from "../../../state/handles.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { useTask } from "../../../threads/useTask.ts";
import { chargeText } from "../../../ui/chargeWords.ts";
import { keptLine } from "../../../ui/keptWords.ts";
import { Mark } from "../../../ui/Mark.tsx";
import { Problem } from "../../../ui/Problem.tsx";
import { wishText } from "../../rundown/keep/wish.ts";
import type { Answered, Reply } from "./answer.ts";
import { waysSentence } from "./heading.ts";
import { jointLine } from "./joints.ts";
import { WAY_NAMES } from "./names.ts";
import { type Question, questionOf } from "./question.ts";
import { choicesOf, wanted, wantedOf, wantedWords } from "./wanted.ts";
import { effectsText, valueToTry, wayText, windingCaution } from "./wayWords.ts";

const FAILED: Reply = { problem: "The ways could not be worked out in this browser; reload the page." };

export interface WaysProps {
  readonly book: Book;
  readonly outcome: Outcome;
}

/** For each handle alone: how far it must go for the wanted margin, or may, and what it costs. */
export default function WaysToHold({ book, outcome }: WaysProps) {
  const chosen = wantedOf(outcome, wanted.value);
  const question = useMemo(
    () => questionOf(book, outcome, chosen),
    [book, outcome, chosen.attitude, chosen.mode],
  );
  const { reply, asked, busy } = useTask("ways", question, FAILED);
  if (!question) return null;
  return (
    <section class="ways" aria-label="Ways to hold" aria-busy={busy}>
      <h2>Ways to hold</h2>
      <WantedPicker outcome={outcome} />
      {busy && <div class="shell-loading" role="progressbar" aria-label="Looking for ways to hold" />}
      {reply && "problem" in reply && <Problem message={reply.problem} />}
      {reply && asked && "answered" in reply && (
        <Found
          answered={reply.answered}
          asked={asked}
          where={wantedWords(outcome, asked.asked)}
          charge={outcome.build.charge}
          scaled={rotorIsTested(outcome)}
        />
      )}
    </section>
  );
}

/** Away from a tested size the fan laws speak. */
function rotorIsTested({ resolved }: Outcome): boolean {
  return resolved?.rotor?.basis === "measured" || (resolved?.thrust ?? null) !== null;
}

function WantedPicker({ outcome }: { outcome: Outcome }) {
  const chosen = wantedOf(outcome, wanted.value);
  const choices = choicesOf(outcome);
  return (
    <p class="ways-wanted">
      <label>
        <span class="visually-hidden">Attitude that must hold</span>
        <select
          value={String(chosen.attitude)}
          onChange={(event) => {
            const { attitude } = choices[event.currentTarget.selectedIndex];
            wanted.value = { ...wanted.value, attitude };
          }}
        >
          {choices.map(({ attitude, label }) => (
            <option key={attitude} value={String(attitude)}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span class="visually-hidden">Parked or driving</span>
        <select
          value={chosen.mode}
          onChange={(event) => {
            const mode = event.currentTarget.value === "driving" ? "driving" : "parked";
            wanted.value = { ...wanted.value, mode };
          }}
        >
          <option value="parked">parked</option>
          <option value="driving">driving</option>
        </select>
      </label>
    </p>
  );
}

interface FoundProps {
  readonly answered: Answered;
  readonly asked: Question;
  readonly where: string;
  /** from which minutes are counted [-] */
  readonly charge: number;
  /** another diameter rests on the fan laws */
  readonly scaled: boolean;
}

function Found({ answered, asked, where, charge, scaled }: FoundProps) {
  const timed = answered.ways.some(({ effects }) => effects?.runTime);
  const does = answered.ways.filter(({ state }) => state !== "never");
  const never = answered.ways.filter(({ state }) => state === "never");
  return (
    <div aria-live="polite">
      <p>{waysSentence(answered, asked.asked.targetMargin, where)}</p>
      {answered.margin !== null && (
        <ul class="ways-list">
          {does.map((way) => (
            <WayLine key={way.handle} way={way} asked={asked} scaled={scaled && way.handle === "diameter"} />
          ))}
          {never.map((way) => (
            <li key={way.handle} class="quiet">
              {wayText(way)}
            </li>
          ))}
          {answered.joints.map((joint) => (
            <li key={joint.way}>{jointLine(joint)}</li>
          ))}
          {answered.kept && <KeptWay kept={answered.kept} asked={asked} />}
        </ul>
      )}
      {timed && <p class="quiet small">Minutes run from {chargeText(charge)} to its end.</p>}
    </div>
  );
}

interface WayLineProps {
  readonly way: Answered["ways"][number];
  readonly asked: Question;
  readonly scaled: boolean;
}

function WayLine({ way, asked, scaled }: WayLineProps) {
  const caution = way.effects && windingCaution(way.effects, asked.windingLimit);
  return (
    <li>
      <span class="way-head">
        <span class={way.state === "does" ? "way-value" : ""}>
          {wayText(way)} {scaled && way.value !== null && <Mark word="scaled" title="by the fan laws" />}
        </span>
        <TryIt way={way} />
      </span>
      {way.effects && <small class="quiet">{effectsText(way.effects)}</small>}
      {caution && <small class="bad">{caution}</small>}
    </li>
  );
}

/** A controller that keeps the wanted margin; Run-down follows it. */
function KeptWay({ kept, asked }: { kept: KeptReach; asked: Question }) {
  const { attitude, targetMargin } = asked.asked;
  const keep = wishText({ kind: "margin", margin: targetMargin, angle: attitude });
  const query = { ...changesToQuery(changes.value), keep };
  return (
    <li>
      <span class="way-head">
        <span>{keptLine(kept, targetMargin)}</span>
        <a href={href("run-down", current.value?.id ?? null, query)}>
          follow it<span class="visually-hidden"> in Run-down</span>
        </a>
      </span>
    </li>
  );
}

/** Sets the what-if handle to the way's value. */
function TryIt({ way }: { way: Answered["ways"][number] }) {
  const { handle, label } = WAY_NAMES[way.handle];
  const value = valueToTry(way);
  if (way.state !== "does" || handle === null || value === null) return null;
  return (
    <button type="button" class="plain" onClick={() => settle({ ...changes.peek(), [handle]: value })}>
      try it
      <span class="visually-hidden">: {label}</span>
    </button>
  );
}
