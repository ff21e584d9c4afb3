import type { Book } from "../book.ts";
import type { BuildCalibration } from "../calibrated.ts";
import { packInAir } from "../coldPack.ts";
import { calibratedFriction, skirtFriction, wheelFriction } from "../frictionBasis.ts";
import { gapBasis } from "../gapBasis.ts";
import { leakBasis } from "../leakBasis.ts";
import type { BuildWithMass } from "../mass/withMass.ts";
import type { Missing } from "../missing.ts";
import { motorAnswer } from "../motorBasis.ts";
import { packBasis } from "../packBasis.ts";
import { pullFactorBasis } from "../pullFactorBasis.ts";
import { type SurfaceRoughness, surfaceRoughness } from "../roughnessBasis.ts";
import { stiffnessBasis } from "../stiffnessBasis.ts";
import type { Blower } from "./blower.ts";
import type { Bases } from "./inputs.ts";
import type { Parts } from "./parts.ts";

/** What the bases of a build are looked up for. */
export interface Asked {
  readonly parts: Parts;
  readonly blower: Blower;
  readonly calibration: BuildCalibration | null;
}

/** What the book lacks for a part's figures. */
interface Lacking {
  readonly basis: "missing";
  readonly missing: Missing;
}

const isLacking = (answer: { readonly basis: string } | null): answer is Lacking =>
  answer?.basis === "missing";

/** Friction of the wheels: as pulls tell it, else what was set or tilted. */
function frictionAnswer(book: Book, build: BuildWithMass, { parts, calibration }: Asked) {
  const whatIf = build.overrides.wheelFriction;
  return (
    calibratedFriction(whatIf, calibration) ?? (parts.surface && wheelFriction(book, parts.surface, whatIf))
  );
}

/** @returns what each number of a build is based on, and what the book lacks for those that are null */
export function basesOf(
  book: Book,
  build: BuildWithMass,
  asked: Asked,
): { readonly bases: Bases; readonly lacks: readonly Missing[] } {
  const { parts, blower, calibration } = asked;
  const { skirt, surface } = parts;
  const { rotor, thrust } = blower;
  const motor = motorAnswer(book, build.motor);
  const pack = packBasis(book, build.pack);
  const friction = frictionAnswer(book, build, asked);
  const gap = gapBasis(build, skirt, calibration);
  const bases = {
    rotor,
    thrust,
    motor: isLacking(motor) ? null : motor,
    pack: pack && !isLacking(pack) ? packInAir(pack, build.air.temperature) : null,
    gap,
    friction: isLacking(friction) ? null : friction,
    ofSkirt: skirt && surface ? skirtFriction(book, surface, skirt) : null,
    leak: rotor && build.skirt ? leakBasis(book, build.skirt, build.surface, gap) : null,
    onSurface: surface && surfaceRoughness(book, surface),
    stiffness: stiffnessBasis(book, build),
    pullFactor: pullFactorBasis(calibration),
  };
  return { bases, lacks: [motor, pack, friction].filter(isLacking).map(({ missing }) => missing) };
}

/** @returns every test that a build's figures are based on, once each */
export function testsBehind(bases: Bases, roughness: SurfaceRoughness | null): string[] {
  const { rotor, thrust, motor, pack, gap, friction, ofSkirt, leak, stiffness, pullFactor } = bases;
  const used = [
    ...[rotor, thrust, motor, pack, rotor && gap, friction, ofSkirt, leak, roughness],
    rotor && stiffness,
    rotor && pullFactor,
  ].flatMap((basis) => basis?.testIds ?? []);
  return [...new Set([...used, ...(thrust?.motorTestIds ?? [])])];
}
