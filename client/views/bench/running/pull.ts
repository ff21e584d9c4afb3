import type { Book } from "../../../../shared/book/book.ts";
import { motorBasis } from "../../../../shared/book/motorBasis.ts";
import { type PullPrediction, predictedPull } from "../../../../shared/book/pullPrediction.ts";
import { type PullTrial, pullTrials } from "../../../../shared/book/readings/pull.ts";
import { inUse, type Reading } from "../../../../shared/book/readings/reading.ts";
import { rotorBasis } from "../../../../shared/book/rotorBasis.ts";
import { fitPull } from "../../../../shared/fit/pullFit.ts";
import type { PullTest } from "../../../../shared/model/tests/pull.ts";
import { dimension } from "../../../../shared/units/dimensions.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import type { MarkWord } from "../../../ui/Mark.tsx";
import { attempt, type Figure, type RowName, type Running } from "./result.ts";
import { bracketSketch, type Sketch } from "./sketch.ts";
import { axisOf } from "./sketches.ts";

/** What the bracket is of: the rig's own weight is accounted for. */
const LOADED: Readonly<Record<PullTest["direction"], string>> = {
  "straight-off": "Pull on the surface",
  along: "Drag along the surface",
  ceiling: "Hung from the ceiling",
};

const NEWTON = dimension("load").si;

/** @returns a force both ways: "4.05 N (413 g)" */
export function bothWays(force: number): string {
  const newtons = formatQuantity(force, "load", { unit: NEWTON });
  return unitOf("load") === NEWTON ? newtons : `${newtons} (${formatQuantity(force, "load")})`;
}

function between(held: number, letGo: number | null): string {
  if (letGo === null) return `more than ${bothWays(held)}`;
  const range = (unit: string) =>
    `${formatQuantity(held, "load", { unit })} to ${formatQuantity(letGo, "load", { unit })}`;
  const shown = unitOf("load");
  return shown === NEWTON ? range(NEWTON) : `${range(NEWTON)} (${range(shown)})`;
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

function rowText({ held, letGo, setAside }: Reading<PullTrial>): string {
  const isWrong = letGo !== null && letGo < held;
  return isWrong && setAside !== null ? setAside : between(held, letGo);
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

const PARTS = ["rotor", "diameter", "motor", "pack", "skirt", "surface", "duty"] as const;

/** @returns what the prediction rests on, where it is not on tests inside their range */
function markOf(test: PullTest, book: Book, { extrapolated }: PullPrediction): MarkWord | undefined {
  const rotor = rotorBasis(book, test.rotor)?.basis;
  if (rotor === "estimated" || rotor === "two-point") return rotor;
  if (extrapolated) return "extrapolated";
  return motorBasis(book, test.motor)?.basis === "stated" ? "stated" : undefined;
}

interface Predicted {
  /** [N]; null where nothing can be predicted */
  readonly force: number | null;
  readonly figures: readonly Figure[];
  readonly notes: readonly string[];
}

const NOT_PREDICTED: Predicted = { force: null, figures: [], notes: [] };

function predictedFigure(test: PullTest, last: Pick<PullTrial, "voltage" | "gap">, book: Book): Predicted {
  if (PARTS.some((key) => test[key] === undefined))
    return { ...NOT_PREDICTED, notes: ["No predicted pull yet: choose all parts of the set-up."] };
  const { found, next } = attempt(() => predictedPull(book, test, last));
  if (!found || found.predicted === null)
    return { ...NOT_PREDICTED, notes: [`No predicted pull: ${found?.missing[0] ?? next ?? ""}`] };
  const figure = {
    label: "Predicted for these parts",
    text: bothWays(found.predicted),
    mark: markOf(test, book, found),
  };
  return { force: found.predicted, figures: [figure], notes: [] };
}

function nextOf(test: PullTest, count: number, wish: string | null): string | null {
  if (test.rigMass === undefined) return "Give the rig's mass: it hangs on the skirt as well.";
  return count === 0 ? "Type a first pull: what held, what let go." : wish;
}

function pullSketch(
  trials: readonly Reading<PullTrial>[],
  predicted: number | null,
  names: readonly RowName[],
): Sketch | null {
  const pull = axisOf("pull", "load");
  return bracketSketch({
    title:
      predicted === null
        ? "Pull that held and that let go"
        : "Pull that held and that let go; dots: predicted",
    row: "pull",
    value: pull.label,
    held: "held",
    letGo: "let go",
    brackets: trials.map(({ row, held, letGo, setAside }) => ({
      ...names[row],
      lo: pull.of(held),
      hi: letGo === null ? null : pull.of(letGo),
      aside: setAside,
    })),
    levels: predicted === null ? [] : [{ key: "predicted", at: pull.of(predicted) }],
  });
}

/** The bracket so far, what the fit says of it, and the pull that the parts should make. */
export function runPull(test: PullTest, names: readonly RowName[], book: Book): Running {
  const canRead = test.rigMass !== undefined && test.direction !== undefined;
  const trials = canRead ? pullTrials(test) : [];
  const used = inUse(trials);
  const bracket = bracketOf(used);
  const strength = used.length > 1 ? median(used) : { figures: [], next: null, notes: [] };
  const predicted: Predicted = canRead
    ? predictedFigure(test, used.at(-1) ?? { voltage: null, gap: null }, book)
    : NOT_PREDICTED;
  return {
    figures: [
      ...(bracket ? [{ label: LOADED[test.direction], text: bracket }] : []),
      ...predicted.figures,
      ...strength.figures,
    ],
    byRow: new Map(trials.map((trial) => [names[trial.row].key, rowText(trial)])),
    next: nextOf(test, used.length, strength.next),
    notes: [...strength.notes, ...predicted.notes],
    sketch: pullSketch(trials, predicted.force, names),
  };
}
