import { powers, sharesOf } from "../../../../shared/fit/information.ts";
import { leakInformation, leakRow } from "../../../../shared/fit/leakBands.ts";
import { fitLeak, type LeakFit } from "../../../../shared/fit/leakFit.ts";
import { type MissingReadings, missingReadings } from "../../../../shared/fit/missingReadings.ts";
import { answerOrNull } from "../../../../shared/numeric/errors.ts";
import { formatFixed, formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import { bandQuantile } from "../rotor/bands.ts";
import { missingSentence } from "../rotor/sentence.ts";
import type { Contribution } from "../share.ts";
import type { LeakGroup, LeakPoint } from "./leakData.ts";
import { middlePressure } from "./leakSentence.ts";

const usable = (points: readonly LeakPoint[]) =>
  points.filter(({ aside, pressure, flow }) => aside === null && pressure > 0 && flow > 0);

const flowAt = ({ coefficient, exponent }: Pick<LeakFit, "coefficient" | "exponent">, pressure: number) =>
  coefficient * pressure ** exponent;

/** @returns what each test brought to a group's law, by index of the page's tests; those without a reading in it left out */
export function leakContributions(group: LeakGroup): ReadonlyMap<number, Contribution> {
  const { fit, points } = group;
  const used = usable(points);
  const tests = [...new Set(points.map(({ test }) => test))];
  const inverse = fit && leakInformation(fit);
  const shares =
    fit &&
    inverse &&
    sharesOf(
      inverse,
      used.map(({ pressure, test }) => ({
        row: leakRow(pressure),
        weight: flowAt(fit, pressure) ** 2,
        group: tests.indexOf(test),
      })),
      tests.length,
    );
  return new Map(
    tests.map((test, i) => {
      const own = used.filter((point) => point.test === test).length;
      const all = points.filter((point) => point.test === test).length;
      const share = shares ? shares[i] : null;
      return [test, { used: own, aside: all - own, share, shift: shiftWithout(group, test) }];
    }),
  );
}

/** Of the flow in the middle of the tested pressures. */
function shiftWithout(group: LeakGroup, test: number): number | null {
  const { fit, points } = group;
  if (!fit) return null;
  const rest = answerOrNull(() => fitLeak({ points: usable(points).filter((point) => point.test !== test) }));
  const middle = middlePressure(group);
  return rest && flowAt(fit, middle) / flowAt(rest, middle) - 1;
}

/** @returns the readings that would narrow a group's band most over the pressures that were tested, places in ln Δp */
export function leakNext(fit: LeakFit): MissingReadings | null {
  const inverse = leakInformation(fit);
  if (!inverse) return null;
  const [from, to] = fit.pressureRange.map(Math.log);
  return missingReadings({
    inverse,
    row: (log) => powers(log, 2),
    dof: fit.dof,
    weight: (log) => flowAt(fit, Math.exp(log)) ** 2,
    from,
    to,
    quantile: bandQuantile,
  });
}

/** @returns which readings to take next, "Two more readings between 0.10 and 0.22 L/s (60 to 110 Pa) would halve the widest band." */
export function leakMissing(group: LeakGroup): string {
  const { fit } = group;
  if (!fit) return "Readings of flow at two suctions or more, a factor of two apart.";
  if (fit.covariance === null)
    return "Readings at other suctions: two points leave nothing to judge the uncertainty by.";
  const next = leakNext(fit);
  if (!next) return missingSentence(null);
  const [from, to] = [next.from, next.to].map(Math.exp);
  const flows = [from, to].map((pressure) => inUnit(flowAt(fit, pressure), "flow"));
  const decimals = Math.max(0, 1 - Math.floor(Math.log10(flows[0])));
  const same = next.from === next.to;
  return missingSentence({
    count: next.count,
    from: formatFixed(flows[0], decimals),
    to: formatFixed(flows[1], decimals),
    unit: unitOf("flow"),
    at: same
      ? formatQuantity(from, "pressure", { digits: 2 })
      : `${formatQuantity(from, "pressure", { digits: 2 })} to ${formatQuantity(to, "pressure", { digits: 2 })}`,
    shrinks: next.shrinks,
  });
}
