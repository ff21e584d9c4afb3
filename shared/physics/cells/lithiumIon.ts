/**
 * Open-circuit voltage by charge of a lithium-ion cell [-, V], 22 of 200 points: the monotone cubic through them stays within 2 mV of all.
 * Source: Sunil, Pattipati, Balasingam, IEEE Trans. Instrum. Meas. (2025), open data set, MIT licence (docs/licences.md).
 */
export const LITHIUM_ION: readonly (readonly [number, number])[] = [
  [0, 2.7027],
  [0.01005, 2.8869],
  [0.0201, 3.0068],
  [0.03518, 3.1203],
  [0.05025, 3.1954],
  [0.07035, 3.2663],
  [0.09045, 3.3275],
  [0.11558, 3.3798],
  [0.13568, 3.4118],
  [0.14573, 3.4287],
  [0.21608, 3.5001],
  [0.27638, 3.5659],
  [0.41709, 3.6658],
  [0.54774, 3.7811],
  [0.63317, 3.8688],
  [0.73869, 3.9523],
  [0.83417, 4.0518],
  [0.86432, 4.0708],
  [0.90955, 4.086],
  [0.95477, 4.1108],
  [0.98492, 4.151],
  [1, 4.1881],
];
