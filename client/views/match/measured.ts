import type { Book } from "../../../shared/book/resolve.ts";
import type { FamilyPoint } from "../../../shared/book/rotorBasis.ts";
import { assemble } from "../../../shared/physics/assembly.ts";
import { coefficientsOf } from "../../../shared/physics/fanlaws/coefficients.ts";
import { RPM } from "../../../shared/physics/motor.ts";
import { type Machine, overcomesFriction } from "../../../shared/physics/point/machine.ts";
import { balancedSpeed } from "../../../shared/physics/point/speed.ts";
import { formatQuantity } from "../../../shared/units/format.ts";
import { type ShownUnits, unitsShown } from "../../../shared/units/showing.ts";
import { keptOn } from "../../charts/kept.ts";
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

/** φ and ψ of each reading, on a ground of the rotor's size [m] and the air's density [kg/m³], where it says none itself. */
const reducedOn = keptOn((points: readonly FamilyPoint[], ground: string) => {
  const [diameter, density] = ground.split(" ").map(Number);
  return points.map((point) => coefficients(point, diameter, density));
});

/** What each reading said, in the units shown. */
const wordsOf = keptOn((points: readonly FamilyPoint[], _units: ShownUnits) => points.map(words));

/** Speeds of the machine over φ, asked once for a grid: a reading between two takes their straight line. */
const GRID = 48;

function tipSpeeds(machine: Machine, most: number): number[] {
  return Array.from(
    { length: GRID + 1 },
    (_, i) => balancedSpeed(machine, (most * i) / GRID).speed * machine.radius,
  );
}

function speedAt(speeds: readonly number[], share: number): number {
  const at = Math.min(GRID - 1e-9, share * GRID);
  const i = Math.floor(at);
  return speeds[i] + (at - i) * (speeds[i + 1] - speeds[i]);
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

/** Readings as they were carried last, and what by. */
interface Carried {
  readonly by: readonly unknown[];
  readonly points: readonly MeasuredPoint[];
}

const carried = new WeakMap<readonly FamilyPoint[], Carried>();

/** @returns the family's readings as they would stand on the shown curve, the same ones where no setting moves them; none for an estimated rotor or one that stands still */
export function measuredPoints(book: Book, { resolved }: Outcome): readonly MeasuredPoint[] {
  const rotor = resolved?.rotor;
  const input = resolved?.input;
  if (!rotor || !input || rotor.points.length === 0) return [];
  const { machine } = assemble(input);
  if (!overcomesFriction(machine)) return [];
  const { area, sizeLaw, air } = machine;
  const reduced = reducedOn(rotor.points, `${input.rotor.diameter} ${air.density}`);
  const most = reduced.reduce((largest, { phi }) => Math.max(largest, phi), 0);
  const speeds = tipSpeeds(machine, most);
  const read = wordsOf(rotor.points, unitsShown());
  const by = [book.tests, reduced, read, area, air.density, ...speeds, ...speeds.map(sizeLaw.factor)];
  const last = carried.get(rotor.points);
  if (last && by.every((each, i) => each === last.by[i])) return last.points;
  const titles = new Map(book.tests.map((test) => [test.id, test.data.title || test.data.date]));
  const points = rotor.points.flatMap(({ testId, row, setAside }, i): MeasuredPoint[] => {
    const { phi, psi } = reduced[i];
    const u = speedAt(speeds, most > 0 ? phi / most : 0);
    if (!(u > 0)) return [];
    const pressure = 0.5 * air.density * u * u * psi * sizeLaw.factor(u);
    const test = titles.get(testId) ?? testId;
    return [{ key: `${testId} ${row}`, flow: phi * area * u, pressure, read: read[i], test, setAside }];
  });
  carried.set(rotor.points, { by, points });
  return points;
}
