import type { Book } from "../../../shared/book/resolve.ts";
import type { FamilyPoint } from "../../../shared/book/rotorBasis.ts";
import { assemble } from "../../../shared/physics/assembly.ts";
import { coefficientsOf } from "../../../shared/physics/fanlaws/coefficients.ts";
import { RPM } from "../../../shared/physics/motor.ts";
import { type Machine, overcomesFriction } from "../../../shared/physics/point/machine.ts";
import { balancedSpeed } from "../../../shared/physics/point/speed.ts";
import { formatQuantity } from "../../../shared/units/format.ts";
import type { Outcome } from "../../state/outcome.ts";

/** A reading of a curve test, carried by the fan laws to the build's size, air and speed. */
export interface MeasuredPoint {
  readonly key: string;
  /** [m³/s] */
  readonly flow: number;
  /** [Pa] */
  readonly pressure: number;
  /** what was read, in words */
  readonly read: string;
  /** title or day of its test */
  readonly test: string;
  readonly setAside: string | null;
}

/** φ and ψ of a reading; a pressure below 0, past the open end, keeps its sign. */
function coefficients(point: FamilyPoint, diameter: number, density: number): { phi: number; psi: number } {
  const state = {
    diameter: point.diameter ?? diameter,
    speed: point.rpm * RPM,
    density: point.density ?? density,
  };
  const reading = { flow: point.flow, pressure: Math.abs(point.pressure), shaftPower: null };
  const { phi, psi } = coefficientsOf(reading, state);
  return { phi, psi: point.pressure < 0 ? -psi : psi };
}

/** What of a reading never changes with the handles. */
interface Reduced {
  readonly phi: number;
  readonly psi: number;
  readonly key: string;
  readonly read: string;
}

const kept = new WeakMap<readonly FamilyPoint[], Reduced[]>();

function reducedPoints(points: readonly FamilyPoint[], diameter: number, density: number): Reduced[] {
  const found = kept.get(points);
  if (found) return found;
  const made = points.map((point) => ({
    ...coefficients(point, diameter, density),
    key: `${point.testId} ${point.row}`,
    read: words(point),
  }));
  kept.set(points, made);
  return made;
}

/** Speeds of the machine over φ, asked once for a grid: a reading between two takes their straight line. */
const GRID = 48;

function tipSpeeds(machine: Machine, most: number): (phi: number) => number {
  const speeds = Array.from(
    { length: GRID + 1 },
    (_, i) => balancedSpeed(machine, (most * i) / GRID).speed * machine.radius,
  );
  return (phi) => {
    const at = most > 0 ? Math.min(GRID - 1e-9, (phi / most) * GRID) : 0;
    const i = Math.floor(at);
    return speeds[i] + (at - i) * (speeds[i + 1] - speeds[i]);
  };
}

function words(point: FamilyPoint): string {
  return [
    formatQuantity(point.rpm * RPM, "speed", { decimals: 0 }),
    point.diameter ? formatQuantity(point.diameter, "length") : "",
    formatQuantity(point.flow, "flow"),
    formatQuantity(point.pressure, "pressure"),
  ]
    .filter(Boolean)
    .join(" · ");
}

/** @returns the family's readings as they would stand on the shown curve; none for an estimated rotor or one that stands still */
export function measuredPoints(book: Book, { resolved }: Outcome): MeasuredPoint[] {
  const rotor = resolved?.rotor;
  const input = resolved?.input;
  if (!rotor || !input || rotor.points.length === 0) return [];
  const { machine } = assemble(input);
  if (!overcomesFriction(machine)) return [];
  const reduced = reducedPoints(rotor.points, input.rotor.diameter, machine.air.density);
  const most = reduced.reduce((largest, { phi }) => Math.max(largest, phi), 0);
  const tipSpeed = tipSpeeds(machine, most);
  const titles = new Map(book.tests.map((test) => [test.id, test.data.title || test.data.date]));
  return rotor.points.flatMap((point, i) => {
    const { phi, psi, key, read } = reduced[i];
    const u = tipSpeed(phi);
    if (!(u > 0)) return [];
    return {
      key,
      flow: phi * machine.area * u,
      pressure: 0.5 * machine.air.density * u * u * psi * machine.sizeLaw.factor(u),
      read,
      test: titles.get(point.testId) ?? point.testId,
      setAside: point.setAside,
    };
  });
}
