import { listed } from "../../../shared/decide/verdict/attitudeWords.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import { formatFixed, inUnit, THIN_SPACE } from "../../../shared/units/format.ts";
import { chanceLine, sureSentence } from "./chance/words.ts";
import { type Drawing, placeOf, SHOWN_NAMES, settingText, solvedAt, valueText } from "./mapPlot.ts";
import { insideOf, STOPS, type StopKind } from "./regions.ts";
import { settingBy } from "./settings.ts";

const PERCENT = 100;

const WORDS: Readonly<Record<StopKind, string>> = {
  bursts: "the rotor bursts",
  burns: "the winding burns",
  falls: "it falls",
  tight: "it is tight",
};

/** What stops a place, worst first; null where nothing does. */
function stopAt(
  { question }: Drawing,
  { margin, winding, burst }: ReturnType<typeof solvedAt>,
): StopKind | null {
  const { windingLimit, target } = question.of;
  if (burst < 1) return "bursts";
  if (winding > windingLimit) return "burns";
  if (margin < 1) return "falls";
  return margin < target ? "tight" : null;
}

/** Share of the map on which each thing stops the build first. */
function shares({ question, field }: Drawing): Readonly<Record<StopKind | "holds", number>> {
  const count = { bursts: 0, burns: 0, falls: 0, tight: 0, holds: 0 };
  const inside = STOPS.map((kind) => [kind, insideOf(field, question, kind)] as const);
  for (let i = 0; i < field.margin.length; i++)
    count[inside.find(([, values]) => values[i] > 0)?.[0] ?? "holds"] += 1 / field.margin.length;
  return count;
}

const label = (key: Drawing["question"]["x"]["key"]) => settingBy(key).label.toLowerCase();

/** @returns the map's answer in one sentence: how much of it holds, and what stops the rest */
export function mapSentence(drawing: Drawing): string {
  const part = shares(drawing);
  const { x, y } = drawing.question;
  const whole = (share: number) => `${formatFixed(PERCENT * share, 0)}${THIN_SPACE}%`;
  const rest = STOPS.filter((kind) => part[kind] >= 0.005).map(
    (kind) => `on ${whole(part[kind])} ${WORDS[kind]}`,
  );
  const charge =
    x.key === "charge" || y.key === "charge" ? "" : `At ${whole(drawing.question.of.charge)} charge, `;
  const moved = `with ${label(x.key)} and ${label(y.key)} alone moved, it holds with the margin wanted on ${whole(part.holds)} of this map`;
  const holds = charge ? charge + moved : moved.charAt(0).toUpperCase() + moved.slice(1);
  return `${rest.length > 0 ? `${holds}; ${listed(rest)}` : holds}.${sureSentence(drawing)}`;
}

/** What a place comes to, its margin by itself. */
function placeText(drawing: Drawing, place: { readonly x: number; readonly y: number }) {
  const { x, y } = drawing.question;
  const solved = solvedAt(drawing, place.x, place.y);
  const { margin, winding, time } = solved;
  const stop = stopAt(drawing, solved);
  return {
    place: `${settingText(x.key, place.x)}, ${settingText(y.key, place.y)}`,
    stop: stop === null ? "holds, " : `${WORDS[stop]}, `,
    margin: stop === null ? marginText(Number.isFinite(margin) ? margin : null) : valueText("margin", margin),
    besides: [
      ...chanceLine(drawing, place, { margin, stop }),
      `winding ${valueText("winding", inUnit(winding, "temperature"))}`,
      ...(Number.isNaN(time) ? [] : [valueText("minutes", inUnit(time, "duration"))]),
    ],
    solved,
  };
}

/** @returns what a place of the map comes to, a line each */
export function placeLines(drawing: Drawing, key: string): string[] {
  const at = placeOf(drawing, key);
  if (!at) return [];
  const { place, stop, margin, besides } = placeText(drawing, at);
  const name = drawing.others.find((each) => `other ${each.key}` === key)?.name;
  return [...(name ? [name] : []), place, stop + margin, ...besides];
}

/** What the build comes to where it is moved, in a sentence: what is before its margin, and behind. */
export function movedParts(drawing: Drawing) {
  const { place, stop, margin, besides, solved } = placeText(drawing, drawing.moved);
  return { before: `This build at ${place}: ${stop}`, margin, after: `; ${besides.join("; ")}.`, solved };
}

/** @returns what the build comes to where it is moved */
export function movedSentence(drawing: Drawing): string {
  const { before, margin, after } = movedParts(drawing);
  return before + margin + after;
}

/** @returns what the picture shows, for those who don't see it */
export function pictureSentence(drawing: Drawing, build: string): string {
  const { x, y } = drawing.question;
  return `Map of ${SHOWN_NAMES[drawing.shown]} of ${build} over ${label(x.key)} and ${label(y.key)}, with contour lines and where something stops it. ${mapSentence(drawing)} ${movedSentence(drawing)}`;
}
