import { marginText } from "../../../shared/decide/verdict/figures.ts";
import {
  type Board,
  type Origin,
  type Row,
  type Working,
  workedOut,
} from "../../../shared/physics/working.ts";
import type { Answered, Track } from "./answer.ts";
import { alarmFor, cellVoltageAt, valueAt } from "./rundownWords.ts";

const DOC = "docs/method/run-down.md";
const FOLLOWED =
  "Followed step by step: pack, winding and rotor at every moment, by the classical Runge–Kutta method.";

/** @returns what the time is called at which a track falls below a level */
export const fallTitle = (name: string, level: number): string =>
  `time until the margin on ${name} falls below ${marginText(level)}`;

/** @returns what the end of the charge is called */
export const END_TITLE = "time until the charge ends";
export const ALARM_TITLE = "low-voltage alarm, a cell";

/** What the charge says of a moment: how much is gone, and what was drawn on the way. */
function chargeRows({ samples, pack }: Answered, time: number): Row[] {
  const [first] = samples;
  const left = valueAt(samples, time, ({ charge }) => charge);
  const gone = first.charge - left;
  const rows: Row[] = [
    [["z₀", "charge at the start", ""], first.charge],
    [["z", "charge then", ""], left],
    [["C", "charge that a full cell holds", "C"], pack.capacity],
    [["N_p", "cells in parallel", ""], pack.parallel],
  ];
  if (!(time > 0)) return rows;
  const mean = (gone * pack.parallel * pack.capacity) / time;
  return [...rows, [["I_mean", "mean current out of the pack until then", "A"], mean]];
}

function timeWorking(answered: Answered, title: string, time: number, until: string): Working {
  return workedOut(
    {
      title,
      equation: `t = (z₀ − z)·N_p·C/I_mean,  ${until}`,
      output: ["t", "s"],
      source: `charge drawn from the pack; ${DOC}`,
      assumptions: [FOLLOWED],
    },
    [
      ...chargeRows(answered, time),
      [["V_cell", "of a loaded cell then", "V"], cellVoltageAt(answered.samples, time)],
    ],
    time,
  );
}

function fallWorkings(answered: Answered, { name, holds, target }: Track, over: string): Working[] {
  const levels = [
    [holds, 1],
    [target, answered.targetMargin],
  ] as const;
  return levels.flatMap(([fall, level], i) => {
    if (fall.time === null || (i === 1 && level === 1)) return [];
    const until = `margin(t) = ${Number(level.toFixed(3))}`;
    return [timeWorking(answered, fallTitle(`${name}${over}`, level), fall.time, until)];
  });
}

function alarmWorking(answered: Answered): Working | null {
  const alarm = alarmFor(answered, "holds");
  if (!alarm) return null;
  const { samples, minimumVoltage, end } = answered;
  const time = alarm.lost?.holds.time ?? end.time;
  const loaded = alarm.lost?.holds.cellVoltage ?? cellVoltageAt(samples, time);
  return workedOut(
    {
      title: ALARM_TITLE,
      equation: "V_alarm = max(V_cell(t), V_min)",
      output: ["V_alarm", "V"],
      source: `the loaded cell where the first attitude is lost, or where the charge ends; ${DOC}`,
      assumptions: ["Rounded up to hundredths of a volt, so that it goes before and not after."],
    },
    [
      [["t", alarm.lost ? `time until ${alarm.lost.name} is lost` : "time until the charge ends", "s"], time],
      [["V_cell", "of a loaded cell then", "V"], loaded],
      [["V_min", "least that its maker allows", "V"], minimumVoltage],
    ],
    alarm.cell,
  );
}

function originsOf({ samples: [first], pack, minimumVoltage }: Answered): Origin[] {
  const page = "On the pack's page.";
  return [
    { symbol: "z₀", value: first.charge, what: "Set beside the chart, full unless set.", tests: [] },
    { symbol: "C", value: pack.capacity, what: page, tests: [] },
    { symbol: "N_p", value: pack.parallel, what: "On the pack's page, or tried in the build.", tests: [] },
    { symbol: "V_min", value: minimumVoltage, what: page, tests: [] },
  ];
}

/** @returns how the minutes and the alarm of a run came about */
export function runBoard(answered: Answered): Board {
  const { tracks, over, end, minimumVoltage } = answered;
  const until = end.reason === "empty" ? "z = 0" : `V_cell(t) = ${minimumVoltage}`;
  return {
    workings: [
      timeWorking(answered, END_TITLE, end.time, until),
      alarmWorking(answered) ?? [],
      ...tracks.map((track) => fallWorkings(answered, track, "")),
      ...(over?.tracks ?? []).map((track) => fallWorkings(answered, track, ` over ${over?.name}`)),
    ].flat(),
    origins: originsOf(answered),
  };
}
