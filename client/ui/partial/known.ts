import { namedAttitudes } from "../../../shared/book/attitudes.ts";
import type { Unknown } from "../../../shared/book/resolve.ts";
import type { Build } from "../../../shared/model/build.ts";
import { asProblem } from "../../../shared/numeric/errors.ts";
import type { PartialVehicle } from "../../../shared/physics/partial/input.ts";
import {
  type PartialAnswer,
  type PartialMoment,
  partialAnswer,
} from "../../../shared/physics/partial/partialAnswer.ts";
import type { Outcome } from "../../state/outcome.ts";

export type Named = ReturnType<typeof namedAttitudes>[number];

/** What a build's views say where something is missing. */
export interface Known {
  readonly build: Build;
  readonly unknown: readonly Unknown[];
  readonly vehicle: PartialVehicle;
  /** the cells' least voltage under load, where their curve isn't known [V] */
  readonly cellMinimum: number | null;
  /** a motor turns the rotor; else it is asked at the speeds of its tests */
  readonly coupled: boolean;
  readonly named: readonly Named[];
  readonly answer: PartialAnswer;
}

/** Nothing, something, or why not even that. */
export type KnownReply = { readonly known: Known } | { readonly problem: string } | null;

/** The floor is asked as well: it needs no name in a sentence. */
const FLOOR: Named = { title: "Floor", name: "the floor", angle: 0 };

/** @returns what can be said of a build that lacks something; null where nothing is missing, or nothing can be said */
export function knownOf({ build, resolved }: Pick<Outcome, "build" | "resolved">): KnownReply {
  const partial = resolved?.partial;
  if (!partial) return null;
  const named = [...namedAttitudes(build), FLOOR];
  const { blower, vehicle } = partial.input;
  const machine = blower.turnedBy === "motor" ? blower.machine : null;
  const asked = { angles: named.map(({ angle }) => angle), target: build.targetMargin };
  const made = asProblem(() => partialAnswer(partial.input, asked));
  if ("problem" in made) return made;
  return {
    known: {
      build,
      unknown: partial.unknown,
      vehicle,
      cellMinimum: machine && partial.unknown.includes("charge") ? machine.pack.openCircuitVoltage : null,
      coupled: machine !== null,
      named,
      answer: made.answered,
    },
  };
}

/** @returns the state that sentences speak of: the only one, or that at the highest tested speed */
export function leading({ answer }: Pick<Known, "answer">): PartialMoment | null {
  return answer.moments.at(-1) ?? null;
}
