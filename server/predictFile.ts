import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { z } from "zod";
import type { predictResponse } from "../shared/model/api/predict.ts";
import { NoAnswerError } from "../shared/numeric/errors.ts";
import { formatQuantity } from "../shared/units/format.ts";
import { readJson } from "./json.ts";
import { Refusal } from "./refusal.ts";
import { predictComputation } from "./routes/predict.ts";
import { parsed } from "./routes/route.ts";

type Answer = z.output<typeof predictResponse>;

const USAGE = `Usage: npm run --silent predict -- [--text] FILE
FILE is the body of POST /predict as JSON, - for standard input. Answers with the JSON of POST /predict, with --text in a few lines.
`;

/** @returns the JSON that POST /predict answers to a body @throws {Refusal} {NoAnswerError} where it would refuse it */
export function predictedJson(body: Uint8Array): string {
  const request = parsed(predictComputation.request, readJson(body));
  return Buffer.from(predictComputation.answer(request)).toString("utf8");
}

const margin = (value: number | null) => (value === null ? "no pull needed" : `${value.toFixed(2)} ×`);

/** @returns an answer of POST /predict in a few lines */
export function predictedText({ point, suction, attitudes, worst, verdict, warnings }: Answer): string {
  const pull = `Pull ${formatQuantity(suction, "load")}.`;
  const rotor = point
    ? [
        `Rotor ${Math.round(point.rpm)} rpm, ${point.pressure === null ? "open" : `${formatQuantity(point.pressure, "pressure", { unit: "Pa" })} and ${formatQuantity(point.flow, "flow", { unit: "L/s" })}`}, pack ${formatQuantity(point.packVoltage, "voltage")} at ${formatQuantity(point.packCurrent, "current")}.`,
      ]
    : ["The rotor stands."];
  const held = attitudes.map(
    ({ angle, parked, driving }) =>
      `${angle}°: parked ${margin(parked.margin)}, driving ${margin(driving.margin)}`,
  );
  const least = `Worst: parked ${margin(worst.parked.margin)} at ${worst.parked.angle.toFixed(0)}°, driving ${margin(worst.driving.margin)} at ${worst.driving.angle.toFixed(0)}°`;
  return [
    verdict.reason,
    pull,
    ...rotor,
    ...held,
    least,
    ...warnings.map(({ message }) => `Watch out: ${message}`),
  ].join("\n");
}

/** What the process is given, so that tests can stand in for it. */
export interface Surroundings {
  readonly read: (file: string) => Uint8Array;
  readonly out: (text: string) => void;
  readonly complain: (text: string) => void;
}

/** @returns the code that the process ends with: 0 answered, 1 refused, 2 not understood */
export function predictFile(words: readonly string[], { read, out, complain }: Surroundings): number {
  const files = words.filter((word) => word !== "--text");
  const [file] = files;
  if (files.length !== 1 || file.startsWith("--")) {
    complain(USAGE);
    return 2;
  }
  try {
    const json = predictedJson(read(file));
    out(words.includes("--text") ? `${predictedText(JSON.parse(json))}\n` : `${json}\n`);
    return 0;
  } catch (error) {
    if (error instanceof Refusal || error instanceof NoAnswerError || isFileError(error)) {
      complain(`${error.message}\n`);
      return 1;
    }
    throw error;
  }
}

function isFileError(error: unknown): error is NodeJS.ErrnoException {
  return error instanceof Error && "syscall" in error;
}

/** A file is named from where the command was given, which npm keeps. */
export const readFile = (file: string): Uint8Array =>
  readFileSync(file === "-" ? 0 : resolve(process.env.INIT_CWD ?? process.cwd(), file));
