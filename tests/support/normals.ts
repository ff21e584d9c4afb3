import { createRandom } from "#shared/numeric/random.ts";

/** A seeded stream of independent standard normal numbers, by the polar formula of Box and Muller (Ann. Math. Stat. 29 (1958) 610). */
export function normals(seed: number): () => number {
  const random = createRandom(seed);
  const ready: number[] = [];
  return () => {
    if (ready.length === 0) {
      const radius = Math.sqrt(-2 * Math.log(1 - random.uniform()));
      const turn = 2 * Math.PI * random.uniform();
      ready.push(radius * Math.cos(turn), radius * Math.sin(turn));
    }
    return ready.pop() ?? Number.NaN;
  };
}
