import { isDestroyed } from "../../../../shared/decide/verdict/states.ts";
import { formatFixed, THIN_SPACE } from "../../../../shared/units/format.ts";
import type { Track } from "../../rundown/answer.ts";
import { fallWords } from "../../rundown/rundownWords.ts";
import { END_TITLE, fallTitle, runBoard } from "../../rundown/runWorkings.ts";
import type { Column } from "../useColumn.ts";
import { BEYOND, type Cell, NOTHING, type RowGroup, row, rowsOfAll } from "./row.ts";

const MINUTE = 60;
const minutesText = (seconds: number) => `${formatFixed(seconds / MINUTE, 1)}${THIN_SPACE}min`;

/** A run that rotor or motor don't last is no run to rely on. */
function asIf({ verdict }: Column): Pick<Cell, "tone" | "also"> {
  return verdict && isDestroyed(verdict.state) ? { tone: "void", also: ["as if it lasted"] } : {};
}

function endCell(column: Column): Cell | null {
  const { run, isRunning } = column;
  if (!run) return isRunning ? null : NOTHING;
  const { time, reason } = run.end;
  const why = reason === "empty" ? "until the cell is empty" : "until the loaded cell is at its minimum";
  const { tone, also = [] } = asIf(column);
  return {
    text: minutesText(time),
    also: [why, ...also],
    tone,
    saved: time / MINUTE,
    working: { board: () => runBoard(run), title: END_TITLE },
  };
}

const TONES = { falls: "near", "holds-to-the-end": "good", "never-held": "bad" } as const;

function trackCell({ holds, name }: Track, column: Column): Cell | null {
  const { run } = column;
  if (!run) return NOTHING;
  const { head, rest } = fallWords(holds, run.samples);
  const { tone = TONES[holds.state], also = [] } = asIf(column);
  const state = holds.state === "holds-to-the-end" ? run.end.time : holds.time;
  return {
    text: head,
    also: [rest, ...also].filter(Boolean),
    tone,
    saved: holds.state === "never-held" ? 0 : (state ?? 0) / MINUTE,
    ...(holds.time === null ? {} : { working: { board: () => runBoard(run), title: fallTitle(name, 1) } }),
  };
}

function tracksOf({ run }: Column) {
  return (run?.tracks ?? []).map((track) => {
    const name =
      track.key === "worst" ? "the worst angle" : `${track.name} at ${formatFixed(track.angle, 0)}°`;
    return {
      ...track,
      key: name,
      title: `Holds ${name} for`,
      angle: track.key === "worst" ? BEYOND : track.angle,
    };
  });
}

/** How long each build holds, from a full charge, driving. */
export function running(columns: readonly Column[]): RowGroup {
  return {
    title: "Minutes from a full charge",
    rows: [
      row("end", "Charge lasts", "min", columns, endCell),
      ...rowsOfAll(columns, tracksOf, trackCell, "min"),
    ],
  };
}
