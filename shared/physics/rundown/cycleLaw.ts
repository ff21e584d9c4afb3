import type { Pull } from "../hold/pull.ts";
import { type CycleLoad, type CycleSegment, loadsOf, underLoad } from "./cycle.ts";
import type { RundownInput } from "./input.ts";
import { type Moment, type RundownLaw, steadyLaw } from "./law.ts";

/** Share-weighted mean over the loads; null where one has none. */
function meanOf(
  loads: readonly CycleLoad[],
  under: readonly Moment[],
  pick: (moment: Moment) => number,
): number {
  return loads.reduce((sum, { share }, i) => sum + share * pick(under[i]), 0);
}

function meanPressure(loads: readonly CycleLoad[], under: readonly Moment[]): number | null {
  if (under.some(({ pressure }) => pressure === null)) return null;
  return meanOf(loads, under, ({ pressure }) => pressure ?? 0);
}

/** The mean pull; how it gives is told by the heaviest load, the last. */
function meanPull(suction: number, under: readonly Moment[]): Pull {
  return { set: Math.max(0, suction), giving: under[under.length - 1].pull.giving };
}

function meanMoment(loads: readonly CycleLoad[], under: readonly Moment[]): Moment {
  const { time, charge, rise } = under[0];
  const mean = (pick: (moment: Moment) => number) => meanOf(loads, under, pick);
  const suction = mean((moment) => moment.suction);
  return {
    time,
    charge,
    rise,
    chargeRate: mean((moment) => moment.chargeRate),
    riseRate: mean((moment) => moment.riseRate),
    packVoltage: mean((moment) => moment.packVoltage),
    cellVoltage: mean((moment) => moment.cellVoltage),
    packCurrent: mean((moment) => moment.packCurrent),
    windingTemperature: mean((moment) => moment.windingTemperature),
    rpm: mean((moment) => moment.rpm),
    pressure: meanPressure(loads, under),
    suction,
    pull: meanPull(suction, under),
    works: under.every(({ works }) => works),
    duty: mean((moment) => moment.duty),
    spare: Math.min(...under.map(({ spare }) => spare)),
    under,
  };
}

/**
 * The law of a run-down through a drive cycle: charge and winding follow the cycle's mean, and each load is kept beside it.
 *
 *     dz/dt = Σ s_k·dz/dt|_k,  dΔT/dt = Σ s_k·dΔT/dt|_k;  I_aux,k = I_aux + I_k
 *
 * @param input - build with its cell, all SI [-]
 * @param cycle - segments, checked [°, -, A]
 * @returns the law, asked by time [s], charge [-] and winding rise [K]; its moments hold one of each load, by rising current
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid for a cycle that is short beside the run and comes again and again. Source: averaging of a periodic load; docs/method/run-down.md
 */
export function cycleLaw(input: RundownInput, cycle: readonly CycleSegment[]): RundownLaw {
  const loads = loadsOf(cycle);
  const laws = loads.map((load) => steadyLaw(underLoad(input, load)));
  return {
    momentAt: (time, charge, rise) =>
      meanMoment(
        loads,
        laws.map((law) => law.momentAt(time, charge, rise)),
      ),
    // The heaviest load comes last, and with it the worst of what there is to be said.
    notesAt: (charge) => laws[laws.length - 1].notesAt(charge),
  };
}
