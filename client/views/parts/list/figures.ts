import { type Book, findById } from "../../../../shared/book/book.ts";
import { motorBasis } from "../../../../shared/book/motorBasis.ts";
import { packBasis } from "../../../../shared/book/packBasis.ts";
import { propellerBasis } from "../../../../shared/book/propellerBasis.ts";
import { rotorBasis } from "../../../../shared/book/rotorBasis.ts";
import { surfaceRoughness } from "../../../../shared/book/roughnessBasis.ts";
import { ALLOWANCE_TITLE } from "../../../../shared/book/roughnessTitles.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { asProblem } from "../../../../shared/numeric/errors.ts";
import { evaluatePolynomial, firstPositiveZero } from "../../../../shared/numeric/polynomial.ts";
import { type MotorConstants, shaftTorque, torqueConstant } from "../../../../shared/physics/motor.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { counted } from "../../../ui/count.ts";
import type { MarkWord } from "../../../ui/Mark.tsx";
import { PACK_CAPACITY_TITLE } from "../../curves/pack/packTitles.ts";

/** A figure of a part, in words. */
export interface PartFigure {
  readonly text: string;
  /** of its working, where tests say it and not the part's record */
  readonly title?: string;
  /** [SI] */
  readonly value?: number;
}

/** What a part's row in the list says of it. */
export interface PartFigures {
  readonly figures: readonly PartFigure[];
  /** what the figures or the curve rest on, where it isn't a test */
  readonly mark?: MarkWord;
  readonly sketch?: Sketch;
}

/** A small curve, each axis over its own span. */
export interface Sketch {
  /** what it shows, in words */
  readonly of: string;
  readonly points: readonly (readonly [x: number, y: number])[];
}

const STEPS = 24;
const shares = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);

const stated = (si: number | undefined, name: DimensionName): PartFigure[] =>
  si === undefined ? [] : [{ text: formatQuantity(si, name) }];

/** What the tests say, with its working; undefined: they don't. */
const told = (si: number | undefined, name: DimensionName, title: string): PartFigure[] =>
  si === undefined ? [] : [{ text: formatQuantity(si, name), title, value: si }];

const words = (...texts: readonly string[]): PartFigure[] => texts.map((text) => ({ text }));

const sizesOf = ({ data }: StoredOf<"rotors">): PartFigure[] => {
  const sizes = (data.sizes ?? []).map(({ diameter }) => formatQuantity(diameter, "length"));
  return sizes.length > 0 ? words(sizes.join(", ")) : [];
};

/** Pressure coefficient over flow coefficient up to free flow. */
function rotor(book: Book, record: StoredOf<"rotors">): PartFigures {
  const figures = sizesOf(record);
  if (record.data.kind === "propeller") {
    const found = asProblem(() => propellerBasis(book, record.id));
    const known = "answered" in found && found.answered.basis !== "missing";
    return { figures: [...figures, ...words(known ? "propeller" : "propeller, thrust not known yet")] };
  }
  const found = asProblem(() => rotorBasis(book, record.id));
  if (!("answered" in found) || found.answered.basis === "missing")
    return { figures: [...figures, ...words("no curve yet")] };
  const { basis, psi, phiMax } = found.answered;
  const end = firstPositiveZero(psi) ?? phiMax;
  const points = shares.map((share) => [share, evaluatePolynomial(psi, share * end)] as const);
  return {
    figures,
    ...(basis === "measured" ? {} : { mark: basis }),
    sketch: { of: "pressure over flow", points },
  };
}

/** Efficiency over current at the rated voltage, up to the current at stall; null where no voltage is rated. */
function efficiency(constants: MotorConstants, volts: number | undefined): Sketch | null {
  if (volts === undefined) return null;
  const stall = volts / constants.resistance;
  const points = shares.slice(1).map((share) => {
    const current = share * stall;
    const speed = (volts - current * constants.resistance) / torqueConstant(constants.kv);
    const power = shaftTorque(constants, current, speed) * speed;
    return [share, Math.max(0, power / (volts * current))] as const;
  });
  return { of: "efficiency over current at the rated voltage", points };
}

function motor(book: Book, { id, data }: StoredOf<"motors">): PartFigures {
  const found = asProblem(() => motorBasis(book, id));
  const basis = "answered" in found ? found.answered : null;
  const fitted = basis?.basis === "measured" ? told : stated;
  const figures = [
    ...fitted(basis?.constants.kv ?? data.kv, "kv", "speed constant"),
    ...fitted(basis?.constants.resistance ?? data.resistance, "resistance", "resistance"),
    ...stated(data.mass, "mass"),
  ];
  const sketch = basis && efficiency(basis.constants, data.ratedVoltage);
  return {
    figures,
    ...(basis?.basis === "measured" ? {} : { mark: "stated" }),
    ...(sketch ? { sketch } : {}),
  };
}

/** Open-circuit voltage of a cell from empty to full. */
function pack(book: Book, { id, data }: StoredOf<"packs">): PartFigures {
  const found = asProblem(() => packBasis(book, id));
  const basis =
    "answered" in found && found.answered && found.answered.basis !== "missing" ? found.answered : null;
  const cells = data.parallel > 1 ? `${data.series} × ${data.parallel} cells` : `${data.series} in series`;
  const capacity = (basis?.cell.capacity ?? data.cell.capacity ?? Number.NaN) * data.parallel;
  const held = Number.isFinite(capacity) ? capacity : undefined;
  const drawn = basis?.capacityFrom === "emptied" ? told : stated;
  const figures = [
    ...words(cells),
    ...drawn(held, "charge", PACK_CAPACITY_TITLE),
    ...stated(data.mass, "mass"),
  ];
  if (!basis) return { figures };
  const mark = basis.basis === "stated" ? "stated" : basis.basis === "chemistry" ? "estimated" : undefined;
  return {
    figures,
    ...(mark ? { mark } : {}),
    sketch: { of: "cell voltage over charge", points: basis.cell.curve },
  };
}

function skirt({ data }: StoredOf<"skirts">): PartFigures {
  const gap = `gap ${formatQuantity(data.gap, "length", { digits: 2 })}`;
  return { figures: [...stated(data.area, "area"), ...words(gap), ...stated(data.mass, "mass")] };
}

function surface(book: Book, record: StoredOf<"surfaces">): PartFigures {
  const { basis, value } = surfaceRoughness(book, record);
  const text = `rough ${formatQuantity(value, "roughness", { digits: 2 })}`;
  const isTold = basis === "measured separately";
  const rough: PartFigure = isTold ? { text, title: ALLOWANCE_TITLE, value } : { text };
  const joints = record.data.joints?.length ?? 0;
  return { figures: [rough, ...(joints > 0 ? words(counted(joints, "joint")) : [])] };
}

function build(book: Book, { data }: StoredOf<"builds">): PartFigures {
  const rotorName = findById(book.rotors, data.rotor)?.data.name ?? data.rotor;
  return {
    figures: words(
      `${rotorName} ${formatQuantity(data.diameter, "length")}`,
      findById(book.motors, data.motor)?.data.name ?? data.motor,
      findById(book.packs, data.pack)?.data.name ?? data.pack,
    ),
  };
}

/** @returns what is known of a part in a few figures, and its curve where it has one */
export function figuresOf(book: Book, collection: string, id: string): PartFigures {
  const of = <C extends "rotors" | "motors" | "packs" | "skirts" | "surfaces" | "builds">(name: C) =>
    name === collection ? (book[name] as readonly StoredOf<C>[]).find((each) => each.id === id) : undefined;
  const [rotors, motors, packs] = [of("rotors"), of("motors"), of("packs")];
  const [skirts, surfaces, builds] = [of("skirts"), of("surfaces"), of("builds")];
  if (rotors) return rotor(book, rotors);
  if (motors) return motor(book, motors);
  if (packs) return pack(book, packs);
  if (skirts) return skirt(skirts);
  if (surfaces) return surface(book, surfaces);
  return builds ? build(book, builds) : { figures: [] };
}
