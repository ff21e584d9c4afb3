import type { Spectrum } from "../../../../shared/fit/sound/spectrum.ts";
import type { Level, Plot } from "../../../charts/model/plot.ts";
import type { Table } from "../../../ui/table.ts";

/** So many points of the spectrum are drawn, each the loudest of its lines. */
const POINTS = 360;
/** What lies further under the loudest is not drawn [dB]. */
const DEEP = 80;
/** Harmonics that are marked. */
const MARKED = 4;
const STEP_OF_AXIS = 10;

interface Drawn {
  readonly spectrum: Spectrum;
  /** blade-passing frequency; null where none is heard [Hz] */
  readonly found: number | null;
  /** drawn up to here [Hz] */
  readonly to: number;
}

function pointsOf({ spectrum: { power, step }, to }: Drawn): { x: number; y: number }[] {
  const last = Math.min(power.length - 1, Math.floor(to / step));
  const lines = Math.max(1, Math.ceil(last / POINTS));
  const points: { x: number; y: number }[] = [];
  for (let from = 1; from <= last; from += lines) {
    let loudest = from;
    for (let k = from; k < Math.min(from + lines, last + 1); k++) if (power[k] > power[loudest]) loudest = k;
    points.push({ x: loudest * step, y: 10 * Math.log10(Math.max(power[loudest], 1e-20)) });
  }
  return points;
}

/** Loudness over frequency, with the blade-passing frequency and its harmonics. */
export function spectrumPlot(drawn: Drawn): Plot {
  const points = pointsOf(drawn);
  const top = Math.ceil(Math.max(...points.map(({ y }) => y)) / STEP_OF_AXIS) * STEP_OF_AXIS;
  const least = Math.floor(Math.min(...points.map(({ y }) => y)) / STEP_OF_AXIS) * STEP_OF_AXIS;
  const bottom = Math.max(top - DEEP, Math.min(least, top - STEP_OF_AXIS));
  const { found } = drawn;
  const harmonics = found === null ? [] : Array.from({ length: MARKED }, (_, i) => (i + 1) * found);
  const levels = harmonics
    .filter((at) => at < drawn.to)
    .map(
      (at, i): Level => ({
        key: `harmonic ${i + 1}`,
        along: "y",
        at,
        tone: "rotor",
        style: "dots",
        label: `${i + 1}×`,
      }),
    );
  return {
    x: { label: "frequency, Hz", from: 0, to: drawn.to },
    y: { label: "loudness, dB under full scale", from: bottom, to: top },
    lines: [
      {
        key: "spectrum",
        tone: "ink",
        style: "solid",
        weight: "fine",
        points: points.map(({ x, y }) => ({ x, y: Math.max(bottom, y) })),
      },
    ],
    levels,
  };
}

/** The points of the spectrum's chart as numbers. */
export function spectrumTable(drawn: Drawn): Table {
  return { columns: ["frequency, Hz", "loudness, dB"], rows: pointsOf(drawn).map(({ x, y }) => [x, y]) };
}
