/** Seeded random numbers: mulberry32 (T. Ettinger's public-domain generator, from memory), normal by Box and Muller. */
export function noiseSource(seed: number) {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  /** a reading: true value, relative and fixed noise, rounded to the instrument's step */
  const read = (value: number, relative: number, step: number, fixed = 0) => {
    const noisy = value * (1 + relative * normal()) + fixed * normal();
    return Number((Math.round(noisy / step) * step).toPrecision(12));
  };
  return { uniform, normal, read };
}
