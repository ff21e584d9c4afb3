import { sharesOf } from "../../../../shared/fit/information.ts";
import { type MissingReadings, missingReadings } from "../../../../shared/fit/missingReadings.ts";
import { motorRow, pairInformation } from "../../../../shared/fit/motorBands.ts";
import { fitMotor } from "../../../../shared/fit/motorFit.ts";
import type { VoltageFit } from "../../../../shared/fit/voltageFit.ts";
import { answerOrNull } from "../../../../shared/numeric/errors.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { figureIn, formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import { bandQuantile } from "../rotor/bands.ts";
import { missingSentence } from "../rotor/sentence.ts";
import type { Contribution } from "../share.ts";
import type { MotorPage, MotorPoint } from "./motorData.ts";

/** @returns rows that the fit rests on */
export const inFit = (page: MotorPage): MotorPoint[] =>
  page.points.filter((point) => point.aside === null && point.fullThrottle);

/** @returns voltage that lines over the speed are drawn for: the highest of the rows that count, which reaches all of their speeds [V] */
export function usualVoltage(page: MotorPage): number {
  return Math.max(...inFit(page).map((point) => point.voltage), 0) || 1;
}

/** @returns current that a motor draws at a voltage and speed [A] */
export function currentAt(fit: VoltageFit, voltage: number, rpm: number): number {
  return (voltage - fit.backEmf * RPM * rpm) / fit.resistance;
}

/** @returns what each test brought to the constants, in the order of the page's tests */
export function motorContributions(page: MotorPage): Contribution[] {
  const { fit } = page.basis;
  const used = inFit(page);
  const inverse = fit && pairInformation(fit.voltage);
  const grouped = used.map((point) => ({ row: motorRow(point), weight: 1, group: point.test }));
  const shares = inverse && sharesOf(inverse, grouped, page.tests.length);
  return page.tests.map((_, test) => {
    const own = used.filter((point) => point.test === test).length;
    const aside = page.points.filter((point) => point.test === test && point.aside !== null).length;
    return { used: own, aside, share: shares ? shares[test] : null, shift: shiftWithout(page, test) };
  });
}

/** Of K_v. */
function shiftWithout(page: MotorPage, test: number): number | null {
  const { fit } = page.basis;
  if (!fit) return null;
  const given = fit.standardErrors.resistance === null ? fit.resistance : undefined;
  const rows = inFit(page).filter((point) => point.test !== test);
  const rest = answerOrNull(() => fitMotor({ rows, resistance: given }));
  return rest && fit.kv / rest.kv - 1;
}

/** Speeds that were tested, down to where the motor would draw more at that voltage than it was ever seen to: no load is asked for that may burn it. */
function speedsToAsk(page: MotorPage, fit: VoltageFit, voltage: number): { from: number; to: number } {
  const rows = inFit(page);
  const speeds = rows.map(({ rpm }) => rpm);
  const most = Math.max(...rows.map(({ current }) => current));
  const slowest = (voltage - most * fit.resistance) / (fit.backEmf * RPM);
  return { from: Math.max(Math.min(...speeds), slowest), to: Math.max(...speeds) };
}

/** @returns rows that would narrow the voltage's band most over the speeds that were tested, at the highest voltage */
export function motorNext(page: MotorPage): MissingReadings | null {
  const { fit } = page.basis;
  const inverse = fit && pairInformation(fit.voltage);
  if (!fit || !inverse) return null;
  const voltage = usualVoltage(page);
  const { from, to } = speedsToAsk(page, fit.voltage, voltage);
  if (!(to > from)) return null;
  return missingReadings({
    inverse,
    row: (rpm) => motorRow({ current: currentAt(fit.voltage, voltage, rpm), rpm }),
    dof: fit.voltage.dof,
    weight: () => 1,
    from,
    to,
    quantile: bandQuantile,
  });
}

const AMPERES = 2;

/** Two digits are as many as a load can be set to. */
const rounded = (rpm: number) => Number(rpm.toPrecision(2));

/** @returns which rows to take next, and at what current */
export function motorMissing(page: MotorPage): string {
  const { fit } = page.basis;
  if (!fit)
    return "Rows at full throttle without load and under two or three loads, or an ohmmeter's reading of the winding.";
  if (!pairInformation(fit.voltage))
    return "Rows at other loads: these leave nothing to judge the uncertainty of the constants by.";
  const next = motorNext(page);
  if (!next) return missingSentence(null);
  const voltage = usualVoltage(page);
  const amperes = [next.to, next.from].map((rpm) =>
    formatFixed(Math.max(0, currentAt(fit.voltage, voltage, rpm)), AMPERES - 1),
  );
  const draws = amperes[0] === amperes[1] ? amperes[0] : `${amperes[0]} to ${amperes[1]}`;
  return missingSentence({
    count: next.count,
    from: figureIn(rounded(next.from) * RPM, "speed", 0),
    to: figureIn(rounded(next.to) * RPM, "speed", 0),
    unit: unitOf("speed"),
    at: `a load that draws ${draws}\u202fA at ${formatQuantity(voltage, "voltage")}`,
    shrinks: next.shrinks,
  });
}
