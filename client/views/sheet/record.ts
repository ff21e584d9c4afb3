import { testsLeftOut } from "../../../shared/book/leftOut/leftOut.ts";
import { marksOf } from "../../../shared/book/marks.ts";
import { told } from "../../../shared/decide/verdict/told.ts";
import { wayOutText } from "../../../shared/decide/verdict/wayOutWords.ts";
import { asProblem } from "../../../shared/numeric/errors.ts";
import type { Changes } from "../../state/handles.ts";
import { attitudeRows } from "../../state/outcome.ts";
import { shareParts } from "../../ui/uncertaintyWords.ts";
import { stripOf } from "../match/strip/stripOf.ts";
import { CAUTIONS } from "../rundown/limits/limitWords.ts";
import { alarmFor } from "../rundown/rundownWords.ts";
import { partRows } from "./partRows.ts";
import type { Sheet } from "./useSheet.ts";

/** When and by what a sheet was made, and of which numbers. */
export interface Made {
  readonly at: Date;
  /** of the program */
  readonly version: string;
  /** the book holds the invented demo */
  readonly demo: boolean;
  /** what was tried against the build as it is stored, SI */
  readonly tried: Changes;
}

/** Of the shape of the record; a later one that reads differently counts on. */
const SHAPE = 1;

function attitudesOf({ outcome, sure: { doubt } }: Sheet) {
  return stripOf(outcome).map(({ title, angle, parked, driving, parkedModes, drivingModes, worst }) => {
    const sampled = doubt?.attitudes.find((each) => each.angle === angle) ?? null;
    return {
      title,
      angle,
      tightest: worst,
      parked: { margin: parked, first: parkedModes, sampled: sampled?.parked ?? null },
      driving: { margin: driving, first: drivingModes, sampled: sampled?.driving ?? null },
    };
  });
}

function crossingsOf({ verdict: { crossings } }: Sheet) {
  return crossings.map(({ joint, way, attitudes, worst }) => ({ joint, way, attitudes, worst }));
}

function runOf({ run }: Sheet) {
  if (!run) return null;
  const { end, tracks, minimumVoltage, targetMargin, samples } = run;
  return {
    startCharge: samples[0].charge,
    end,
    minimumVoltage,
    targetMargin,
    alarm: { holds: alarmFor(run, "holds")?.cell ?? null, target: alarmFor(run, "target")?.cell ?? null },
    attitudes: tracks.map(({ title, angle, holds, target }) => ({ title, angle, holds, target })),
  };
}

function massOf({ headroom: { ledger, allowed, mass, target } }: Sheet) {
  return { mass, uncertainty: ledger.mass.uncertainty, target, lines: ledger.lines, allowed };
}

function testsOf({ book, outcome }: Sheet) {
  const used = new Set(outcome.resolved?.tests ?? []);
  const left = asProblem(() => testsLeftOut(book, outcome.build));
  return {
    basedOn: book.tests
      .filter(({ id }) => used.has(id))
      .map(({ id, data: { kind, title, date } }) => ({ id, kind, title, date })),
    leftOut: "answered" in left ? left.answered : [],
  };
}

function nextOf({ next: { reply } }: Sheet) {
  if (!reply || !("answered" in reply)) return [];
  return reply.answered.tests.map(({ key, title, kind, cut, after, takes }) => ({
    key,
    title,
    kind,
    cut,
    after,
    takes,
  }));
}

/**
 * A build's sheet as data.
 *
 * @param sheet - all of it worked out
 * @param made - when, by which version, of which numbers
 * @returns SI throughout, angles in degrees, times in seconds; null where something isn't known
 */
export function recordOf(sheet: Sheet, { at, version, demo, tried }: Made) {
  const { book, build, outcome, sure, limits } = sheet;
  const { verdict, ways } = sheet.verdict;
  const { prediction } = outcome;
  return {
    sheet: SHAPE,
    program: { name: "Gripcurve", version },
    made: at.toISOString(),
    inventedDemo: demo,
    build: { id: build.id, revision: build.revision, tried, ...outcome.build },
    verdict: verdict && told(verdict, ways ? wayOutText(verdict, ways) : ""),
    missing: outcome.resolved?.missing ?? [],
    parts: partRows(book, outcome),
    tests: testsOf(sheet),
    marks: marksOf(book, outcome),
    point: prediction?.point ?? null,
    pull: prediction?.suction ?? null,
    attitudes: attitudeRows(outcome).length > 0 ? attitudesOf(sheet) : [],
    crossings: crossingsOf(sheet),
    uncertainty: sure.doubt && {
      pull: sure.doubt.suction,
      shares: shareParts(sure.doubt.shares, sure.sources).map(({ what, share }) => ({ what, share })),
      overJoint: sure.doubt.over && {
        joint: sure.doubt.over.joint.name,
        shares: shareParts(sure.doubt.over.shares, sure.sources).map(({ what, share }) => ({ what, share })),
      },
    },
    runDown: runOf(sheet),
    limits: limits && {
      charge: limits.charge,
      first: limits.first,
      limits: limits.limits,
      energies: limits.energies,
    },
    mass: massOf(sheet),
    fitUp: sheet.fits,
    nextTests: nextOf(sheet),
    warnings: [...(prediction?.warnings ?? []), ...(outcome.resolved?.notes ?? [])],
    cautions: Object.values(CAUTIONS),
  };
}
