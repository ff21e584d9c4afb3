import { readJson } from "../json.ts";
import { bleedComputation } from "./bleed.ts";
import { calibrateComputation } from "./calibrate.ts";
import type { Computation } from "./compute.ts";
import { fitComputations } from "./fits.ts";
import { fitUpComputation } from "./fitUp.ts";
import { limitsComputation } from "./limits.ts";
import { powerCutComputation } from "./powerCut.ts";
import { predictComputation } from "./predict.ts";
import { parsed } from "./route.ts";
import { rundownComputation } from "./rundown.ts";
import { sizeComputation } from "./size.ts";
import { swapsComputation } from "./swaps.ts";
import { waysComputations } from "./ways.ts";

/** Whatever is answered from a body alone. A new one is one more line here. */
export const COMPUTATIONS: readonly Computation[] = [
  predictComputation,
  rundownComputation,
  powerCutComputation,
  sizeComputation,
  limitsComputation,
  ...waysComputations,
  ...fitComputations,
  bleedComputation,
  calibrateComputation,
  swapsComputation,
  fitUpComputation,
];

const BY_PATH = new Map(COMPUTATIONS.map((each) => [each.path, each]));

/** @returns the answer of a computation as bytes of JSON @throws {Refusal} on a body that its schema refuses */
export function computedText({
  path,
  body,
}: {
  readonly path: string;
  readonly body: Uint8Array;
}): Uint8Array {
  const of = BY_PATH.get(path);
  if (!of) throw new RangeError(`Nothing is computed at ${path}.`);
  return of.answer(parsed(of.request, readJson(body)));
}
