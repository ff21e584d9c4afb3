import { type TestOffset, testOffsets } from "../../../../shared/fit/testOffsets.ts";
import { answerOrNull } from "../../../../shared/numeric/errors.ts";
import { offBy, percent } from "../curveWords.ts";
import { type RotorFamily, readingsInUse } from "./family.ts";

/** @returns what each test's tachometer reads too much against the middle one; none where the tests cannot be compared */
export function familyOffsets(family: RotorFamily): readonly TestOffset[] {
  const used = readingsInUse(family);
  if (!family.fit || used.length === 0) return [];
  const points = used.map(({ rpm, flow, pressure, density, diameter, weight, test }) => ({
    rpm,
    flow,
    pressure,
    density,
    diameter,
    weight,
    test,
  }));
  return answerOrNull(() => testOffsets({ diameter: used[0].diameter, points }).tests) ?? [];
}

/** @returns what a test's offset means, in words */
export function offsetSentence({ offset, standardError, stands }: TestOffset, tests: number): string {
  const size = `${offBy(offset)} (±\u202f${percent(standardError)})`;
  if (!stands) return `Its speeds agree with the others': ${size}.`;
  if (tests === 2)
    return `Against the middle of the two tests its tachometer reads about ${offBy(offset)}; a third test shows which is wrong.`;
  return `Its tachometer reads about ${offBy(offset)} against the others.`;
}

/** @returns the sentences by the test's identifier */
export function offsetSentences(family: RotorFamily): ReadonlyMap<string, string> {
  const offsets = familyOffsets(family);
  return new Map(offsets.map((each) => [family.tests[each.test].id, offsetSentence(each, offsets.length)]));
}
