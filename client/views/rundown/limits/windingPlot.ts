import type { WarmUp } from "../../../../shared/decide/limits/warmUp.ts";
import { formatFixed, formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import type { Line, Plot, Ring } from "../../../charts/model/plot.ts";

export interface WindingPicture {
  readonly warmUp: WarmUp;
  /** [K]; null where it isn't known */
  readonly limit: number | null;
  readonly estimated: boolean;
}

type Sample = WarmUp["samples"][number];

const MINUTE = 60;
/** From this span on the time is shown in minutes [s]. */
const IN_MINUTES = 180;
const ROOM = 1.08;

const shown = ({ temperature }: Pick<Sample, "temperature">) => inUnit(temperature, "temperature");

/** @returns in which unit of time a warm-up is shown */
export function timeUnit({ samples }: WarmUp): { readonly size: number; readonly name: "min" | "s" } {
  const end = samples[samples.length - 1].time;
  return end >= IN_MINUTES ? { size: MINUTE, name: "min" } : { size: 1, name: "s" };
}

/** Where the winding meets its limit; null where it never does. */
function metAt({ warmUp, limit }: WindingPicture): Sample | null {
  const { samples, timeToLimit } = warmUp;
  if (timeToLimit === null || limit === null) return null;
  return { time: timeToLimit, temperature: Math.max(limit, samples[0].temperature) };
}

/** Up to the limit, and dashed beyond it from there on. */
function linesOf(picture: WindingPicture, size: number): Line[] {
  const { samples } = picture.warmUp;
  const met = metAt(picture);
  const line = (key: string, style: Line["style"], of: readonly Sample[]): Line => ({
    key,
    tone: "ink",
    style,
    weight: "fine",
    points: of.map((sample) => ({ x: sample.time / size, y: shown(sample) })),
  });
  if (!met) return [line("winding", "solid", samples)];
  return [
    line("winding", "solid", [...samples.filter(({ time }) => time < met.time), met]),
    line("beyond", "dashed", [met, ...samples.filter(({ time }) => time > met.time)]),
  ];
}

/** The winding's temperature from cold, its limit, and where it meets it. */
export function windingPlot(picture: WindingPicture): Plot {
  const { warmUp, limit, estimated } = picture;
  const { samples } = warmUp;
  const { size, name } = timeUnit(warmUp);
  const temperatures = samples.map(shown);
  const [start] = temperatures;
  const bound = limit === null ? null : inUnit(limit, "temperature");
  const most = Math.max(...temperatures, bound ?? start + 1);
  const top = start + ROOM * (most - start);
  const end = samples[samples.length - 1].time / size;
  const met = metAt(picture);
  const ring: Ring[] = met ? [{ key: "met", x: met.time / size, y: shown(met), look: "predicted" }] : [];
  return {
    x: { label: `time from cold, ${name}`, from: 0, to: end },
    y: {
      label: `${headed("winding temperature", "temperature")}${estimated ? " (estimated)" : ""}`,
      from: Math.min(0, start),
      to: top,
    },
    levels:
      bound === null
        ? []
        : [
            {
              key: "limit",
              along: "x",
              at: bound,
              tone: "needed",
              style: "dots",
              label: {
                text: `limit ${formatQuantity(limit ?? 0, "temperature", { decimals: 0 })}`,
                short: "limit",
              },
            },
          ],
    lines: linesOf(picture, size),
    rings: ring,
    stops: samples.map((sample, i) => ({ key: String(i), x: sample.time / size, y: shown(sample) })),
  };
}

/** @returns what a moment of the warm-up says of itself */
export function warmUpWords(picture: WindingPicture, key: string): string[] {
  const sample = key === "met" ? metAt(picture) : picture.warmUp.samples[Number(key)];
  if (!sample) return [];
  const { size, name } = timeUnit(picture.warmUp);
  const time = `${formatFixed(sample.time / size, 1)}\u202f${name}`;
  const temperature = formatQuantity(sample.temperature, "temperature", { decimals: 0 });
  return [`${temperature} after ${time}`, ...(key === "met" ? ["at its limit"] : [])];
}
