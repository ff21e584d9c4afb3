import { listedAttitudes } from "../../../shared/decide/verdict/attitudeWords.ts";
import type { VerdictState } from "../../../shared/decide/verdict/states.ts";
import type { Fall, Sample } from "../../../shared/physics/rundown.ts";
import { formatFixed, formatQuantity, THIN_SPACE } from "../../../shared/units/format.ts";
import { chargeText } from "../../ui/chargeWords.ts";
import type { Answered, Track } from "./answer.ts";

const MINUTE = 60;
/** An alarm is set to hundredths of a volt; it is rounded up, never down. */
const ALARM_STEPS = 100;
const ROUNDING_SLACK = 1e-9;

/** @returns "3.4 minutes", "40 seconds" */
export function duration(seconds: number): string {
  if (seconds < MINUTE) return `${formatFixed(seconds, 0)} seconds`;
  return `${formatFixed(seconds / MINUTE, 1)} minutes`;
}

/** @returns "48 °C" */
export function celsiusText(temperature: number): string {
  return formatQuantity(temperature, "temperature", { decimals: 0 });
}

/** @returns "7.04 V" */
export function volts(value: number, decimals = 2): string {
  return `${formatFixed(value, decimals)}${THIN_SPACE}V`;
}

const inState = (tracks: readonly Track[], state: Fall["state"]) =>
  tracks.filter((track) => track.holds.state === state);

const namesOf = (tracks: readonly Track[], joint = "and") =>
  listedAttitudes(
    tracks.map((track) => track.name),
    joint,
  );

interface Loss {
  readonly track: Track;
  readonly time: number;
  readonly packVoltage: number;
  /** of one cell, loaded [V]; null: as the samples have it */
  readonly cellVoltage: number | null;
}

/** @returns the first attitude that is held at the start and lost on the way */
export function firstLoss(tracks: readonly Track[], level: "holds" | "target"): Loss | null {
  const losses = tracks.flatMap((track) => {
    const { time, packVoltage, cellVoltage = null } = track[level];
    return time === null || packVoltage === null ? [] : [{ track, time, packVoltage, cellVoltage }];
  });
  return losses.reduce<Loss | null>((first, each) => (first && first.time <= each.time ? first : each), null);
}

function endText({ end }: Answered): string {
  return `the charge ends after ${duration(end.time)}`;
}

/** @returns the answer to "how long does it hold?" */
export function rundownSentence(answered: Answered): string {
  const sentence = steadySentence(answered);
  if (!answered.cycled || answered.end.time === 0) return sentence;
  return `On its drive cycle ${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`;
}

/** @returns when the first attitude is lost over the hardest joint, where that comes before it is lost beside it; else nothing */
export function overSentence({ over, tracks }: Answered): string {
  if (!over) return "";
  const never = over.tracks.filter(
    ({ key, holds }) =>
      holds.state === "never-held" && tracks.find((each) => each.key === key)?.holds.state !== "never-held",
  );
  if (never.length > 0)
    return `Over ${over.name} ${namesOf(never)} ${never.length > 1 ? "are" : "is"} never held.`;
  const lost = firstLoss(over.tracks, "holds");
  if (!lost) return `Over ${over.name} it holds to the end as well.`;
  return `Over ${over.name} it stops holding ${lost.track.name} after ${duration(lost.time)}, at ${volts(lost.packVoltage, 1)}.`;
}

function steadySentence(answered: Answered): string {
  const { tracks, end } = answered;
  if (end.time === 0) return "There is no run: the loaded cell is at its minimum from the start.";
  const never = inState(tracks, "never-held");
  const lost = firstLoss(tracks, "holds");
  if (never.length === tracks.length)
    return `The pull is too small for all it must hold while it drives, even at the start; ${endText(answered)}.`;
  const but =
    never.length > 0
      ? ` ${capital(namesOf(never))} ${never.length > 1 ? "are" : "is"} never held while it drives.`
      : "";
  if (lost)
    return `It stops holding ${lost.track.name} after ${duration(lost.time)}, at ${volts(lost.packVoltage, 1)}.${but}`;
  if (never.length === 0) return `The pull is enough everywhere it must go until ${endText(answered)}.`;
  return `The pull is enough for ${namesOf(inState(tracks, "holds-to-the-end"))} until ${endText(answered)}.${but}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** @returns what stands in a run's place where rotor or motor don't last it */
export function asIfText(state: VerdictState): string {
  const why =
    state === "bursts" ? "The rotor bursts on the way up" : "The motor burns when it is left running";
  return `${why}, so there is no run to rely on. Greyed below: the run as if it lasted.`;
}

/** A voltage to set the alarm to, and why there. */
export interface Alarm {
  /** of one loaded cell, rounded up to hundredths, never below its minimum [V] */
  readonly cell: number;
  /** what lets go there; null: the end of the charge sets it */
  readonly lost: Track | null;
}

/** @returns the alarm that goes before a margin passes its level; null where nothing is held at that level from the start */
export function alarmFor(answered: Answered, level: "holds" | "target"): Alarm | null {
  const { tracks, samples, end } = answered;
  if (tracks.length > 0 && tracks.every((track) => track[level].state === "never-held")) return null;
  const lost = firstLoss(tracks, level);
  const cell = lost?.cellVoltage ?? cellVoltageAt(samples, lost?.time ?? end.time);
  return { cell: upward(Math.max(cell, answered.minimumVoltage)), lost: lost?.track ?? null };
}

/** Under the heaviest load of a drive cycle, where there is one. */
function lowestCell({ cellVoltage, loads }: Sample): number {
  return (loads ?? []).reduce((least, load) => Math.min(least, load.cellVoltage), cellVoltage);
}

/** @returns a figure of a run at a moment, between two samples by their straight line [unit of the figure] */
export function valueAt(samples: readonly Sample[], time: number, of: (sample: Sample) => number): number {
  const after = samples.findIndex((sample) => sample.time >= time);
  if (after < 0) return of(samples[samples.length - 1]);
  if (after === 0) return of(samples[0]);
  const [from, to] = [samples[after - 1], samples[after]];
  const share = (time - from.time) / (to.time - from.time);
  return of(from) + share * (of(to) - of(from));
}

/** @returns loaded voltage of one cell at a moment of the run [V] */
export const cellVoltageAt = (samples: readonly Sample[], time: number): number =>
  valueAt(samples, time, lowestCell);

function upward(voltage: number): number {
  return Math.ceil(voltage * ALARM_STEPS - ROUNDING_SLACK) / ALARM_STEPS;
}

/** @returns the alarm in words */
export function alarmText(answered: Answered): string {
  const alarm = alarmFor(answered, "holds");
  const kept = alarmFor(answered, "target");
  if (!alarm) return "No alarm helps: nothing is held from the start.";
  const why = alarm.lost ? `where ${alarm.lost.name} is lost` : "where the charge ends";
  const target = `${formatFixed(answered.targetMargin, 2)}${THIN_SPACE}×`;
  const wanted =
    kept?.lost && kept.cell > alarm.cell
      ? `; set to ${volts(kept.cell)} a cell it warns before ${kept.lost.name} falls below the ${target} wanted`
      : "";
  return `Low-voltage alarm: at least ${volts(alarm.cell)} a cell under load, ${why}${wanted}.`;
}

/** @returns from which charge it starts, when it ends, and why then */
export function endSentence({ end, minimumVoltage, samples }: Answered): string {
  const why =
    end.reason === "empty"
      ? "the cell is empty"
      : `the loaded cell reaches its minimum of ${volts(minimumVoltage)}`;
  return `From ${chargeText(samples[0].charge)} it runs ${duration(end.time)}, until ${why}.`;
}

/** @returns when a level is passed, as a cell of the table says it */
export function fallWords(
  fall: Fall,
  samples: readonly Sample[],
): { readonly head: string; readonly rest: string } {
  if (fall.time === null || fall.packVoltage === null)
    return fall.state === "never-held" ? { head: "never held", rest: "" } : { head: "to the end", rest: "" };
  const minutes = `${formatFixed(fall.time / MINUTE, 1)}${THIN_SPACE}min`;
  return {
    head: minutes,
    rest: `${volts(fall.packVoltage)}, ${volts(fall.cellVoltage ?? cellVoltageAt(samples, fall.time))} a cell`,
  };
}

/** @returns what the picture shows, for those who don't see it */
export function pictureSentence(answered: Answered, build: string): string {
  return `Margins of ${build} against minutes while it drives, with pack voltage, speed, pressure and winding temperature below. ${rundownSentence(answered)} ${endSentence(answered)}`;
}
