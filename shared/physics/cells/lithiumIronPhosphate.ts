/**
 * Open-circuit voltage by charge of a lithium iron phosphate cell [-, V], 27 of 600 points: the monotone cubic through them stays within 2 mV of all.
 * Source: Sunil, Pattipati, Balasingam, IEEE Trans. Instrum. Meas. (2025), open data set, MIT licence (docs/licences.md).
 */
export const LITHIUM_IRON_PHOSPHATE: readonly (readonly [number, number])[] = [
  [0, 2.0102],
  [0.00167, 2.279],
  [0.00334, 2.4177],
  [0.00668, 2.5951],
  [0.00835, 2.6562],
  [0.01336, 2.7725],
  [0.0217, 2.8829],
  [0.03172, 2.9687],
  [0.04174, 3.031],
  [0.06177, 3.1202],
  [0.07679, 3.1687],
  [0.08681, 3.1917],
  [0.09516, 3.2005],
  [0.16361, 3.2207],
  [0.18698, 3.2347],
  [0.23038, 3.2545],
  [0.38397, 3.2933],
  [0.62604, 3.3047],
  [0.70117, 3.3166],
  [0.75793, 3.3341],
  [0.93823, 3.3422],
  [0.98164, 3.3494],
  [0.98998, 3.3702],
  [0.99499, 3.418],
  [0.99666, 3.4491],
  [0.99833, 3.4955],
  [1, 3.5981],
];
