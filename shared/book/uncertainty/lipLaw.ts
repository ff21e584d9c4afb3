/** Loss of the lip and friction along it, as the lip's law has them [-]. Common practice, no source: docs/method/uncertainty.md, What was never measured here. */
export const LIP_LAW = 0.15;
