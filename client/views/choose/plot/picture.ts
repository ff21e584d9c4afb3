import { formatFixed } from "../../../../shared/units/format.ts";
import { counted } from "../../../ui/count.ts";
import type { Table } from "../../../ui/table.ts";
import type { Column, PointsAnswer } from "../answers.ts";
import { type ColumnSpec, columnSpec } from "../columns.ts";
import { frontPoints, isAdmissible, isOnFront, type PlotPoint } from "./front.ts";

/** A combination that is marked in the plot by itself. */
export interface Marked {
  readonly index: number;
  /** SI, in the plot's columns; null: it has no figure there */
  readonly x: number | null;
  readonly y: number | null;
}

/** What the plot shows, in shown units. */
export interface Picture {
  readonly x: ColumnSpec;
  readonly y: ColumnSpec;
  readonly points: readonly PlotPoint[];
  readonly admissible: number;
  readonly front: number;
  /** combinations of the job; more than the points where they are thinned or have no figure */
  readonly total: number;
  /** the least margin wanted, where a margin is up an axis */
  readonly target: number;
}

export interface PictureInput {
  readonly answer: PointsAnswer;
  readonly x: Column;
  readonly y: Column;
  readonly target: number;
}

/** @returns the points in shown units, with counts for the sentence */
export function pictureOf({ answer, x, y, target }: PictureInput): Picture {
  const [across, up] = [columnSpec(x), columnSpec(y)];
  const points = answer.points.map(
    ([index, a, b, what]): PlotPoint => [index, across.shown(a), up.shown(b), what],
  );
  return {
    x: across,
    y: up,
    points,
    admissible: points.filter(isAdmissible).length,
    front: frontPoints(points).length,
    total: answer.total,
    target,
  };
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** @returns what the plot shows, one sentence */
export function pictureSentence(picture: Picture): string {
  const { x, y, points, total, admissible, front } = picture;
  const drawn =
    points.length < total
      ? `${formatFixed(points.length, 0)} of ${formatFixed(total, 0)} combinations`
      : counted(points.length, "combination");
  return `${y.label} against ${lower(x.label)} of ${drawn}: ${formatFixed(admissible, 0)} of those shown work, ${front} of them a best trade-off of the two.`;
}

/** @returns why fewer points are drawn than there are combinations; null where all are there */
export function thinnedText({ points, total, x, y }: Picture): string | null {
  if (points.length >= total) return null;
  const timed = [x, y].some(({ key }) => key === "time" || key === "keptTime");
  const why = timed ? "; minutes are worked out for the combinations that work, and for few others" : "";
  return `${formatFixed(points.length, 0)} of ${formatFixed(total, 0)} combinations are drawn, every best trade-off among them${why}.`;
}

/** @returns the drawn points as a table: place in the question, the two values, in or out */
export function pictureTable({ x, y, points }: Picture): Table {
  return {
    columns: ["combination", x.axis, y.axis, "works", "best trade-off"],
    rows: points.map((point) => [
      point[0],
      point[1],
      point[2],
      isAdmissible(point) ? "yes" : "no",
      isOnFront(point) ? "yes" : "",
    ]),
  };
}
