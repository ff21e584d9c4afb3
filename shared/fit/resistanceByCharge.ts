import { chiSquareQuantile } from "../numeric/chiSquare.ts";
import { studentQuantile } from "../numeric/student.ts";
import { toldResistance } from "./dischargeResistance.ts";
import type { Step } from "./dischargeSteps.ts";

/** Resistance of one cell about one charge. */
export interface ResistanceAt {
  /** mean of the steps that tell it [-] */
  readonly charge: number;
  /** [Ω] */
  readonly resistance: number;
  /** [Ω] */
  readonly standardError: number;
}

/** Steps of current that a stretch of the charge has at least, and the most stretches. Judgement. */
const [FEWEST, MOST_STRETCHES] = [6, 10];
/** Chance with which one resistance for all charges is taken for several. Judgement. */
const FALSE_ALARM = 0.01;
/** Between the least and the greatest resistance, of the mean: less is not worth a curve [-]. Judgement. */
const LEAST_SPREAD = 0.1;
/** One standard deviation, two-sided, as a share below. */
const ONE_SD = 0.8413447460685429;

interface Stretch extends ResistanceAt {
  /** scatter of a voltage within it [V] */
  readonly residualSd: number;
  readonly dof: number;
}

/** Stretches of as many steps each, from empty to full; what can't tell its resistance is left out. */
function stretchesOf(steps: readonly Step[], count: number): Stretch[] {
  const sorted = [...steps].sort((a, b) => a.charge - b.charge);
  const stretches = Math.min(MOST_STRETCHES, Math.floor(sorted.length / FEWEST));
  const edge = (i: number) => Math.round((i * sorted.length) / stretches);
  const parts = Array.from({ length: stretches }, (_, i) => sorted.slice(edge(i), edge(i + 1)));
  return parts.flatMap((own) => {
    const told = toldResistance(own, count);
    const charge = own.reduce((sum, step) => sum + step.charge, 0) / own.length;
    return told ? [{ charge, ...told, dof: own.length - 1 }] : [];
  });
}

/** A few steps may lie close by chance: no stretch scatters less than the middle one of all; one that scatters more is as unsure as Student's distribution has it. */
function withScatter(stretches: readonly Stretch[]): ResistanceAt[] {
  const scatters = stretches.map(({ residualSd }) => residualSd).sort((a, b) => a - b);
  const usual = scatters[Math.floor(scatters.length / 2)];
  return stretches.map(({ charge, resistance, standardError, residualSd, dof }) => {
    const wider = residualSd > usual ? studentQuantile(ONE_SD, dof) : usual / residualSd;
    return { charge, resistance, standardError: standardError * wider };
  });
}

/** Σ(R − R̄)²/s² against one R for all. */
function scatterOf(stretches: readonly ResistanceAt[]): number {
  const weight = ({ standardError }: ResistanceAt) => 1 / standardError ** 2;
  const sum = (pick: (at: ResistanceAt) => number) => stretches.reduce((all, at) => all + pick(at), 0);
  const mean = sum((at) => weight(at) * at.resistance) / sum(weight);
  return sum((at) => weight(at) * (at.resistance - mean) ** 2);
}

/**
 * Resistance of a cell by its charge, where its discharges show that it varies.
 *
 *     R of each stretch of the charge by {@link toldResistance};  they vary where Σ(R − R̄)²/s² > χ²₀.₉₉, and by a tenth or more
 *
 * @param steps - of current [V, A]
 * @param count - of all readings [-]
 * @returns R by rising charge with standard errors [-, Ω]; null where one resistance explains them all, or too few steps are there to tell
 *
 * Valid for steps that are spread over the charge. Source: test of homogeneity, Cochran, Biometrics 10 (1954) 101–129 (from memory); docs/method/fits/discharge.md
 */
export function resistanceByCharge(steps: readonly Step[], count: number): readonly ResistanceAt[] | null {
  const stretches = withScatter(stretchesOf(steps, count));
  if (stretches.length < 2) return null;
  const each = stretches.map(({ resistance }) => resistance);
  const mean = each.reduce((sum, resistance) => sum + resistance, 0) / each.length;
  if (Math.max(...each) - Math.min(...each) < LEAST_SPREAD * mean) return null;
  const limit = chiSquareQuantile(1 - FALSE_ALARM, stretches.length - 1);
  return scatterOf(stretches) > limit ? stretches : null;
}
