import { formatShort } from "../../../shared/units/format.ts";
import type { Line, Plot, Ring, SideText, Stop } from "../../charts/model/plot.ts";
import type { Answered, Track } from "./answer.ts";

export const MINUTE = 60;
const WALL = 90;
const CEILING = 180;
/** A margin far above the target is cut at the top instead of flattening the rest. */
const MOST_OVER_TARGET = 2.5;
const HEADROOM = 1.08;
const OWN_DASHES = ["6 3", "2 3", "12 3 2 3", "4 2 1 2"] as const;

/** @returns the last minute of a run; at least one second, so that the axis has a length */
export function lastMinute({ end }: Answered): number {
  return Math.max(end.time, 1) / MINUTE;
}

function mostMargin({ tracks, targetMargin }: Answered): number {
  const finite = tracks.flatMap((track) => track.margins.filter((margin) => margin !== null));
  const most = finite.reduce((high, margin) => Math.max(high, margin), 0);
  const wanted = Math.max(1, targetMargin);
  return HEADROOM * Math.max(wanted, Math.min(most, MOST_OVER_TARGET * wanted));
}

/** The wall solid, the ceiling long dashes, the worst solid and heavy, others in dashes of their own. */
function look(track: Track, i: number): Pick<Line, "style" | "weight"> {
  if (track.key === "worst") return { style: "solid", weight: "heavy" };
  if (track.angle === WALL) return { style: "solid" };
  if (track.angle === CEILING) return { style: "long" };
  return { style: { dash: OWN_DASHES[i % OWN_DASHES.length] } };
}

function labelOf({ key, angle, title }: Track): SideText {
  const degrees = `${angle.toFixed(0)}°`;
  const tail = ` ${degrees}`;
  if (key === "worst") return { text: `worst${tail}`, short: `worst${tail}`, tail };
  if (angle === WALL) return { text: `wall${tail}`, short: `wall${tail}`, tail };
  if (angle === CEILING) return { text: `ceiling${tail}`, short: "ceiling", tail };
  return { text: `${title}${tail}`, short: degrees, tail };
}

function trackLines({ tracks, samples }: Answered): Line[] {
  return tracks.map((track, i) => ({
    key: track.key,
    tone: "rotor",
    ...look(track, i),
    points: samples.map(({ time }, k) => ({ x: time / MINUTE, y: track.margins[k] ?? Number.NaN })),
    label: labelOf(track),
  }));
}

/** Where a margin falls below 1. */
function fallRings({ tracks }: Answered): Ring[] {
  return tracks.flatMap(({ key, holds }) =>
    holds.time === null ? [] : [{ key: `fall ${key}`, x: holds.time / MINUTE, y: 1, look: "predicted" }],
  );
}

/** Every sample can be read; the cursor stands on the first attitude's line. */
function stopsOf({ samples, tracks }: Answered): Stop[] {
  return samples.map(({ time }, i) => ({
    key: String(i),
    x: time / MINUTE,
    y: tracks.find(({ margins }) => margins[i] !== null)?.margins[i] ?? 1,
  }));
}

/** Every attitude's margin over the minutes, what is needed and wanted, and where each lets go. */
export function marginPlot(answered: Answered): Plot {
  const end = lastMinute(answered);
  const wanted = answered.targetMargin;
  const top = mostMargin(answered);
  const wantedText = `wanted ${formatShort(wanted, 2)}\u202f×`;
  return {
    x: { label: "time, min", from: 0, to: end },
    y: { label: "margin: pull made over pull needed", from: 0, to: top },
    regions: [
      {
        key: "falls",
        tone: "bad",
        outline: [
          { x: 0, y: 0 },
          { x: 0, y: 1 },
          { x: end, y: 1 },
          { x: end, y: 0 },
        ],
        name: { lines: ["lets go"] },
      },
    ],
    levels: [
      {
        key: "needed",
        along: "x",
        at: 1,
        tone: "needed",
        style: "dots",
        label: { text: "needed 1\u202f×", short: "needed" },
      },
      ...(wanted === 1
        ? []
        : ([
            {
              key: "wanted",
              along: "x",
              at: wanted,
              tone: "needed",
              style: "dots",
              label: { text: wantedText, short: "wanted" },
            },
          ] as const)),
    ],
    lines: trackLines(answered),
    rings: fallRings(answered),
    // a margin above the top is read at it
    stops: stopsOf(answered).map((stop) => ({ ...stop, y: Math.min(top, stop.y) })),
  };
}
