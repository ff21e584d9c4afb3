import { type Book, resolveBuild } from "#shared/book/resolve.ts";
import { COLLECTION_NAMES } from "#shared/model/collections.ts";
import type { PredictInput } from "#shared/physics/predict.ts";

/** What sampling alone moves, and the API doesn't take. */
function asAsked(input: PredictInput): PredictInput {
  const { landFriction: _land, ...skirt } = input.skirt;
  if (!input.rotor.sizeCorrection) return { ...input, skirt };
  const { applied: _size, ...sizeCorrection } = input.rotor.sizeCorrection;
  return { ...input, skirt, rotor: { ...input.rotor, sizeCorrection } };
}

/** @returns a stored build's numbers as POST /predict takes them */
export async function inputOfBuild(address: string, id: string): Promise<PredictInput> {
  const lists = await Promise.all(
    COLLECTION_NAMES.map(async (name) => {
      const response = await fetch(`${address}/api/v1/${name}?limit=500`);
      return [name, ((await response.json()) as { items: unknown }).items] as const;
    }),
  );
  const book = Object.fromEntries(lists) as unknown as Book;
  const build = book.builds.find((each) => each.id === id);
  const input = build && resolveBuild(book, build.data).input;
  if (!input) throw new Error(`The build ${id} has no numbers.`);
  return asAsked(input);
}
