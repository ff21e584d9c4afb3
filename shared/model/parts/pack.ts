import { z } from "zod";
import { PACK } from "../limits.ts";
import { count, fraction, name, nonNegative, note, positive, retired, within } from "../scalar.ts";
import { statedOf } from "../stated.ts";

/** Open-circuit voltage of one cell by state of charge, both strictly rising in charge. */
export const cellCurve = z
  .array(z.tuple([fraction(), within("V", PACK.cell.curve[1])]))
  .min(2)
  .max(400)
  .refine((points) => points.every((point, i) => i === 0 || point[0] > points[i - 1][0]), {
    message: "charge must rise from point to point, for example [[0, 3.3], [0.5, 3.8], [1, 4.2]]",
  })
  .refine((points) => points.every((point, i) => i === 0 || point[1] >= points[i - 1][1]), {
    message: "voltage must not fall as charge rises",
  })
  .refine((points) => points.length === 0 || (points[0][0] === 0 && points[points.length - 1][0] === 1), {
    message: "the curve must run from charge 0 to charge 1",
  });

const cellFigures = z.strictObject({
  capacity: positive("C (1 mAh = 3.6 C)", PACK.cell.capacity),
  minimumVoltage: within("V, loaded", PACK.cell.minimumVoltage),
  resistance: nonNegative("Ω", PACK.cell.resistance),
  curve: cellCurve,
  maxCurrent: positive("A", PACK.cell.maxCurrent).optional(),
});

/** A cell given inline. */
export const cell = cellFigures.extend({
  resistanceCurve: z
    .array(z.tuple([fraction(), nonNegative("Ω", PACK.cell.resistance)]))
    .min(1)
    .max(400)
    .refine((points) => points.every((point, i) => i === 0 || point[0] > points[i - 1][0]), {
      message: "charge must rise from point to point, for example [[0.1, 0.04], [0.5, 0.025]]",
    })
    .nullable()
    .optional()
    .describe("resistance by charge, as discharges showed it: in the place of the one resistance"),
});

/** Kinds of cell whose open-circuit curve is published under an open licence. */
export const CHEMISTRIES = ["lithium-ion", "lithium-iron-phosphate"] as const;

/** A cell as the book keeps it: its curve may be left to a discharge test, or to what its chemistry is known to do. */
export const storedCell = cellFigures.extend({
  curve: cellCurve.optional().describe("open-circuit, by charge; discharge tests take its place"),
  coldFactor: within("resistance at 0 °C over that at 20 °C", PACK.cell.coldFactor)
    .optional()
    .describe("1 to 20: how much the resistance rises in the cold, by the air of the build; 1 unless given"),
  chemistry: z
    .enum(CHEMISTRIES)
    .optional()
    .describe("whose published curve stands in where there is no curve and no discharge test"),
});

const figures = {
  series: count(PACK.series),
  parallel: count(PACK.parallel).default(1),
  wireResistance: nonNegative("Ω", PACK.wireResistance).default(0),
  cell: storedCell,
  mass: nonNegative("kg", PACK.mass).optional(),
  height: positive("m", PACK.height).optional(),
  price: nonNegative("any currency").optional(),
  leadTime: nonNegative("days until it is there", PACK.leadTime).optional(),
};

/** A pack: cells in series and parallel, and the wire to the driver. */
export const pack = z.strictObject({
  name: name(),
  ...figures,
  ...statedOf(figures, ["cellResistance"]),
  note: note(),
  retired: retired(),
});

export type Pack = z.output<typeof pack>;
