import { fitPull } from "../../../../shared/bench/pullFit.ts";
import type { Bench } from "../../../../shared/book/bench.ts";
import { inUse, type PullTrial, pullTrials, type Reading } from "../../../../shared/book/readings.ts";
import type { PullTest } from "../../../../shared/model/tests/pull.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { predictedPull } from "./predictedPull.ts";
import { attempt, type Figure, type Running } from "./result.ts";

/** @returns a force both ways: "4.05 N (413 g)" */
export function bothWays(force: number): string {
  return `${formatQuantity(force, "load", { unit: "N" })} (${formatQuantity(force, "load", { unit: "g" })})`;
}

function between(held: number, letGo: number | null): string {
  if (letGo === null) return `more than ${bothWays(held)}`;
  const newtons = `${formatQuantity(held, "load", { unit: "N" })} to ${formatQuantity(letGo, "load", { unit: "N" })}`;
  const grams = `${formatQuantity(held, "load", { unit: "g" })} to ${formatQuantity(letGo, "load", { unit: "g" })}`;
  return `${newtons} (${grams})`;
}

/** The tightest that all pulls agree on; a pull that contradicts another leaves none. */
function bracketOf(trials: readonly PullTrial[]): string | null {
  if (trials.length === 0) return null;
  const held = Math.max(...trials.map((trial) => trial.held));
  const letGo = Math.min(...trials.map((trial) => trial.letGo ?? Number.POSITIVE_INFINITY));
  if (letGo === Number.POSITIVE_INFINITY) return between(held, null);
  if (letGo >= held) return between(held, letGo);
  return `scattered: one let go at ${bothWays(letGo)}, another held ${bothWays(held)}`;
}

function rowText({ held, letGo }: PullTrial): string {
  if (letGo !== null && letGo < held) return "let go below what held?";
  return between(held, letGo);
}

function median(trials: readonly Reading<PullTrial>[]): {
  figures: Figure[];
  next: string | null;
  notes: string[];
} {
  const { found: fit, next } = attempt(() => fitPull({ trials }));
  if (!fit) return { figures: [], next, notes: [] };
  const figure: Figure = { label: `Median of ${trials.length} pulls`, text: bothWays(fit.median) };
  const notes = fit.warnings.map((warning) => warning.message);
  if (fit.meanInterval === null) return { figures: [figure], next: null, notes };
  const [low, high] = fit.meanInterval;
  return { figures: [figure, { label: "95 % interval", text: between(low, high) }], next: null, notes };
}

/** The bracket so far, what the fit says of it, and the pull that the parts should make. */
export function runPull(test: PullTest, keys: readonly number[], bench: Bench): Running {
  const canRead = test.rigMass !== undefined && test.direction !== undefined;
  const trials = canRead ? pullTrials(test) : [];
  const used = inUse(trials);
  const last = used.at(-1) ?? { voltage: null, gap: null };
  const { found: predicted, next: why } = attempt(() => predictedPull(test, last, bench));
  const lacks = predicted && "lacks" in predicted ? predicted.lacks : why;
  const force = predicted && "force" in predicted ? predicted : null;
  const bracket = bracketOf(used);
  const strength = used.length > 1 ? median(used) : { figures: [], next: null, notes: [] };
  const mark = force?.extrapolated ? "extrapolated" : force?.basis === "estimated" ? "estimated" : undefined;
  return {
    figures: [
      ...(bracket ? [{ label: "Pull on the surface", text: bracket }] : []),
      ...strength.figures,
      ...(force ? [{ label: "Predicted for these parts", text: bothWays(force.force), mark } as Figure] : []),
    ],
    byRow: new Map(trials.map((trial) => [keys[trial.row], rowText(trial)])),
    next: canRead
      ? used.length === 0
        ? "Type a first pull: what held, what let go."
        : strength.next
      : "Give the rig's mass: it hangs on the cup as well.",
    notes: [...strength.notes, ...(lacks ? [`No predicted pull: ${lacks}`] : [])],
  };
}
