import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { KeptReach } from "../../../../shared/decide/ways/kept.ts";
import { href } from "../../../app/router.ts";
import { changes, current, settle } from "../../../state/build.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { triedToQuery } from "../../../state/partsTried.ts";
import { useTask } from "../../../threads/useTask.ts";
import { chargeText } from "../../../ui/chargeWords.ts";
import { keptLine } from "../../../ui/keptWords.ts";
import { Mark } from "../../../ui/Mark.tsx";
import { Problem } from "../../../ui/Problem.tsx";
import { wishText } from "../../rundown/keep/wish.ts";
import type { Answered, Reply } from "./answer.ts";
import { waysSentence } from "./heading.ts";
import { jointCells } from "./joints.ts";
import { WAY_NAMES } from "./names.ts";
import { type Question, questionOf } from "./question.ts";
import { choicesOf, wanted, wantedOf, wantedWords } from "./wanted.ts";
import { effectsText, valueToTry, wayCells, windingCaution } from "./wayWords.ts";

const FAILED: Reply = { problem: "The ways could not be worked out in this browser; reload the page." };

export interface WaysProps {
  readonly book: Book;
  readonly outcome: Outcome;
}

/** For each setting alone: how far it must go for the wanted margin, or may, and what it costs. */
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
  const { targetMargin } = asked.asked;
  return (
    <div>
      <p>{waysSentence(answered, targetMargin, where)}</p>
      {answered.margin !== null && (
        <WaysTable
          answered={answered}
          asked={asked}
          scaled={scaled}
          holds={answered.margin >= targetMargin}
        />
      )}
      {answered.margin !== null && answered.kept && <KeptWay kept={answered.kept} asked={asked} />}
      {timed && <p class="quiet small">Minutes run from {chargeText(charge)} to its end.</p>}
    </div>
  );
}

interface WaysTableProps extends Pick<FoundProps, "answered" | "asked" | "scaled"> {
  readonly holds: boolean;
}

/** A setting a row: where it stands, how far it must go or may, what that costs. */
function WaysTable({ answered, asked, scaled, holds }: WaysTableProps) {
  const costs = answered.ways.some(({ effects }) => effects !== null);
  const ordered = [...answered.ways].sort(
    (a, b) => Number(a.state === "never") - Number(b.state === "never"),
  );
  return (
    <table class={costs ? "ways-list ways-costed" : "ways-list"}>
      <thead>
        <tr>
          <th scope="col">Setting</th>
          <th scope="col" class="number">
            now
          </th>
          <th scope="col" class="number">
            {holds ? "may go" : "must go to"}
          </th>
          {costs && <th scope="col">what it costs</th>}
        </tr>
      </thead>
      <tbody>
        {ordered.map((way) => (
          <WayRow
            key={way.handle}
            way={way}
            asked={asked}
            scaled={scaled && way.handle === "diameter"}
            costs={costs}
          />
        ))}
        {answered.joints.map(jointCells).map(({ label, goal }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td class="ways-said" colSpan={costs ? 3 : 2}>
              {goal}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface WayRowProps {
  readonly way: Answered["ways"][number];
  readonly asked: Question;
  readonly scaled: boolean;
  /** there is a column of costs */
  readonly costs: boolean;
}

function WayRow({ way, asked, scaled, costs }: WayRowProps) {
  const { label, now, goal } = wayCells(way);
  const caution = way.effects && windingCaution(way.effects, asked.windingLimit);
  return (
    <tr>
      <th scope="row">{label}</th>
      <td class="number">{now}</td>
      {way.state === "never" ? (
        <td class="ways-said quiet" colSpan={costs ? 2 : 1}>
          {goal}
        </td>
      ) : (
        <>
          <td class={way.state === "does" ? "number way-value" : "number"}>
            {goal} {scaled && way.value !== null && <Mark word="scaled" title="by the fan laws" />}
          </td>
          {costs && (
            <td class="ways-cost">
              <TryIt way={way} />
              {way.effects && <small class="quiet">{effectsText(way.effects)}</small>}
              {caution && <small class="bad">{caution}</small>}
            </td>
          )}
        </>
      )}
    </tr>
  );
}

/** A controller that keeps the wanted margin; Run-down follows it. */
function KeptWay({ kept, asked }: { kept: KeptReach; asked: Question }) {
  const { attitude, targetMargin } = asked.asked;
  const keep = wishText({ kind: "margin", margin: targetMargin, angle: attitude });
  const query = { ...triedToQuery(changes.value), keep };
  return (
    <p>
      {keptLine(kept, targetMargin)}.{" "}
      <a href={href("run-down", current.value?.id ?? null, query)}>
        Follow it<span class="visually-hidden"> in Run-down</span>
      </a>
    </p>
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
