const HOUR = 3600;
const MINUTE = 60;
const DAY = 24 * HOUR;

/** 1:23:45.6, 01:23.5 */
const CLOCK = /^(?:(\d{1,3}):)?(\d{1,3}):(\d{2}(?:[.,]\d+)?)$/;
/** 2026-03-14T12:00:03.5Z, 2026-03-14 12:00, 2026/03/14 12:00:03 */
const YEAR_FIRST =
  /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})[T ]+(\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?)\s*(Z|[+-]\d{2}:?\d{2})?$/i;
/** 14.03.2026 12:00:03: with points the day stands first (DIN 5008); with strokes it can be read in two ways */
const DAY_FIRST = /^(\d{1,2})\.(\d{1,2})\.(\d{4})[T ,]+(\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?)$/;

/** A time as a logger writes it, in seconds: of the day or of a run; since 1970 where it has a date. */
export interface ClockTime {
  readonly seconds: number;
  /** it says the day as well */
  readonly dated: boolean;
}

function secondsOf(text: string): number | null {
  const [, hours = "0", minutes, seconds] = CLOCK.exec(text) ?? [];
  if (minutes === undefined) return null;
  const whole = Number(minutes);
  const part = Number(seconds.replace(",", "."));
  if (part >= MINUTE || (hours !== "0" && whole >= MINUTE)) return null;
  return Number(hours) * HOUR + whole * MINUTE + part;
}

/** "12:00" beside a date are hours and minutes. */
const ofDay = (text: string): number | null => secondsOf(/^\d{1,2}:\d{2}$/.test(text) ? `${text}:00` : text);

function zoneOf(zone: string | undefined): number {
  const [, sign, hours, minutes] = /^([+-])(\d{2}):?(\d{2})$/.exec(zone ?? "") ?? [];
  if (sign === undefined) return 0;
  return (sign === "-" ? -1 : 1) * (Number(hours) * HOUR + Number(minutes) * MINUTE);
}

function dated(year: string, month: string, day: string, clock: string, zone?: string): ClockTime | null {
  const seconds = ofDay(clock);
  const midnight = Date.UTC(Number(year), Number(month) - 1, Number(day)) / 1000;
  const isDay = new Date(midnight * 1000).getUTCDate() === Number(day);
  return seconds === null || !isDay ? null : { seconds: midnight + seconds - zoneOf(zone), dated: true };
}

/**
 * Reads a time as h:mm:ss, m:ss or a timestamp. Without a zone all times are taken to be of one.
 *
 * @param text - one cell
 * @returns null where it is no such time, or one that can be read in two ways
 *
 * Source: ISO 8601-1:2019 for dates with the year first
 */
export function readClock(text: string): ClockTime | null {
  const bare = text.trim();
  const first = YEAR_FIRST.exec(bare);
  if (first) return dated(first[1], first[2], first[3], first[4], first[5]);
  const [, day, month, year, clock] = DAY_FIRST.exec(bare) ?? [];
  if (day !== undefined) return dated(year, month, day, clock);
  const seconds = secondsOf(bare);
  return seconds === null ? null : { seconds, dated: false };
}

/** @returns seconds from one time of a log to a later one; over midnight where the clock has no date [s] */
export function elapsed(from: ClockTime, to: ClockTime): number {
  const seconds = to.seconds - from.seconds;
  return seconds < 0 && !to.dated && !from.dated ? seconds + DAY : seconds;
}
