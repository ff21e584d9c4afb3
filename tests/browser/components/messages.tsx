import { Answer } from "#client/ui/Answer.tsx";
import { BusyButton } from "#client/ui/BusyButton.tsx";
import { Caution } from "#client/ui/Caution.tsx";
import { Empty } from "#client/ui/Empty.tsx";
import { GiveReason } from "#client/ui/GiveReason.tsx";
import { Later } from "#client/ui/Later.tsx";
import { Problem } from "#client/ui/Problem.tsx";
import type { Shown } from "./shown.ts";

const nothing = () => {};

/** What is said, asked and waited for. */
export const MESSAGES: readonly Shown[] = [
  { component: "Answer", state: "a sentence", drawn: <Answer sentence="47 g left for the overhang." /> },
  {
    component: "Answer",
    state: "with its figures",
    drawn: <Answer sentence="47 g left for the overhang.">560 g on board, margin wanted 1.5 ×</Answer>,
  },
  {
    component: "Caution",
    state: "a hazard",
    drawn: <Caution>Spinning rotors throw fragments: guard, goggles, stay out of the rotor's plane.</Caution>,
  },
  {
    component: "Problem",
    state: "what went wrong",
    drawn: <Problem message="The server does not answer." />,
  },
  {
    component: "Problem",
    state: "with what can be done",
    drawn: (
      <Problem message="The server does not answer.">
        <button type="button">Try again</button>
      </Problem>
    ),
  },
  {
    component: "Empty",
    state: "with what fills it",
    drawn: (
      <Empty title="No leak test yet." action={{ label: "Log a leak test", href: "#leak" }}>
        <p>Two readings of flow and pressure at the gap are enough.</p>
      </Empty>
    ),
  },
  {
    component: "Later",
    state: "its place",
    drawn: (
      <Later load={() => new Promise<{ default: () => null }>(nothing)} what="The run-down" props={{}} />
    ),
  },
  {
    component: "Later",
    state: "could not be loaded",
    drawn: (
      <Later
        load={() => Promise.reject<{ default: () => null }>(new Error("offline"))}
        what="The run-down"
        props={{}}
        atOnce
      />
    ),
  },
  ...[false, true].map((busy) => ({
    component: "BusyButton",
    state: busy ? "busy" : "at rest",
    drawn: (
      <BusyButton type="button" busy={busy}>
        Save the test
      </BusyButton>
    ),
  })),
  {
    component: "GiveReason",
    state: "asked",
    drawn: (
      <GiveReason
        label="Struck out because"
        note="It leaves the fits at once, and comes back from the list of what is struck out."
        action="Strike it out"
        onReason={() => Promise.resolve(null)}
        onDone={nothing}
      />
    ),
  },
];
