import { pullText } from "../../../shared/decide/verdict/figures.ts";
import type { Level as PlotLevel } from "../../charts/model/plot.ts";
import type { Level } from "./picture.ts";

const WALL = 90;
const CEILING = 180;

/** On a phone one word: "wall", "153°"; the row of attitudes has the names. */
function shortOf({ angle, key }: Level): string {
  if (angle === WALL) return "wall";
  if (angle === CEILING) return "ceiling";
  return key === "worst" ? "worst" : `${angle.toFixed(0)}°`;
}

/** @returns what an attitude needs as a line across the plot: above it it holds, below it falls; `pull` is the need [N] */
export function neededLevel(level: Level, at: number, pull: number): PlotLevel {
  const tail = `, ${pullText(pull)}`;
  const label = { text: `${level.title}${tail}`, short: shortOf(level), tail };
  return { key: level.key, along: "x", at, tone: "needed", style: "dots", label };
}
