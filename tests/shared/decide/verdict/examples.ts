import type { Limit, LimitKey } from "#shared/decide/limits/limit.ts";
import { judge } from "#shared/decide/limits/limit.ts";
import type { RotorFigures } from "#shared/decide/limits/rotor.ts";
import type { Chance, Findings } from "#shared/decide/verdict/findings.ts";

/** What a test changes of findings that hold in every way. */
export interface Change {
  /** burst speed over speed; null: not known */
  readonly factor?: number | null;
  /** [K]; null: R_th isn't known */
  readonly winding?: number | null;
  readonly windingLimit?: number | null;
  /** share of each rating that is used */
  readonly ratings?: Partial<Record<LimitKey, number | null>>;
  readonly parked?: number | null;
  readonly driving?: number | null;
  readonly chance?: number | null;
  readonly contradictions?: readonly string[];
  readonly turns?: boolean;
  readonly burnsAfter?: number | null;
  readonly fromCharge?: number | null;
  /** margins over a glazing bar, parked and driving alike */
  readonly crossing?: number;
}

const SPEED = 3000;

function rotorOf(factor: number | null): RotorFigures {
  const burstSpeed = factor === null ? null : factor * SPEED;
  return {
    speed: SPEED,
    tipSpeed: 66,
    mach: 0.19,
    bending: null,
    stress: null,
    strength: null,
    factor,
    burstSpeed,
    safeSpeed: burstSpeed && burstSpeed / 2,
  };
}

/** Limits in an invented motor's and cell's own units, for the words. */
const ALLOWED = { "motor-voltage": 8, "motor-current": 9, "cell-current": 10, "cell-voltage": 3.2 } as const;
const FULL_CELL = 4.2;

function limitOf(key: LimitKey, value: number | null, limit: number | null): Limit {
  const share =
    key === "cell-voltage"
      ? (at: number, least: number) => (FULL_CELL - at) / (FULL_CELL - least)
      : undefined;
  return judge({ key, value, limit, share, missing: null, caution: "motor", estimated: false });
}

function limitsOf({ winding = 350, windingLimit = 393.15, ratings = {}, factor = 2.5 }: Change): Limit[] {
  const used = (key: keyof typeof ALLOWED) => {
    const share = ratings[key] === undefined ? 0.5 : ratings[key];
    const limit = ALLOWED[key];
    if (share === null) return limitOf(key, null, limit);
    return limitOf(
      key,
      key === "cell-voltage" ? FULL_CELL - share * (FULL_CELL - limit) : share * limit,
      limit,
    );
  };
  return [
    limitOf("winding", winding, windingLimit),
    ...(Object.keys(ALLOWED) as (keyof typeof ALLOWED)[]).map(used),
    limitOf("rotor-speed", SPEED, factor === null ? null : (factor * SPEED) / 2),
  ];
}

function crossingAt(margin: number): Findings["crossings"][number] {
  return {
    joint: { name: "the glazing bar", depth: 8e-4, width: 0.03, met: "either" },
    way: "along",
    attitudes: [],
    worst: {
      parked: { angle: 128, margin, governs: ["slide"] },
      driving: { angle: 128, margin, governs: ["slide"] },
    },
  };
}

/** @returns findings of a build that holds in every way, but for the change; 1 N of pull for each unit of margin at 128° */
export function findings(change: Change = {}): Findings {
  const { parked = 2, driving = parked, chance = 0.99, factor = 2.5, turns = true } = change;
  const angle = 128;
  const sure: Chance | null =
    chance === null ? null : { name: "the overhang", angle, holds: chance, margin5: 1.2 };
  return {
    turns,
    suction: turns ? 10 : 0,
    attitudes: [
      { name: "the ceiling", angle: 180, parked: parked && parked * 1.3, driving: driving && driving * 1.3 },
      { name: "the wall", angle: 90, parked: parked && parked * 1.2, driving: driving && driving * 1.2 },
    ],
    worst: {
      parked: { angle, margin: parked, governs: parked === null ? [] : ["slide"] },
      driving: {
        angle,
        margin: driving,
        governs: driving === null ? [] : driving === parked ? ["slide"] : ["climb"],
      },
    },
    crossings: change.crossing === undefined ? [] : [crossingAt(change.crossing)],
    target: 1.5,
    limits: limitsOf(change),
    rotor: rotorOf(factor),
    fromCharge: change.fromCharge === undefined ? 1 : change.fromCharge,
    burnsAfter: change.burnsAfter ?? null,
    chance: sure,
    contradictions: change.contradictions ?? [],
  };
}
