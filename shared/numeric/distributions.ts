/** Every distribution of this room under one address. */
export { chiSquareQuantile } from "./chiSquare.ts";
export { incompleteBeta } from "./incompleteBeta.ts";
export { incompleteGamma, type Tails } from "./incompleteGamma.ts";
export { logNormalCdf, logNormalInterval, normalCdf, normalDensity } from "./normal.ts";
export { normalQuantile } from "./normalQuantile.ts";
export { clopperPearson, wilson } from "./proportion.ts";
export { studentCdf, studentQuantile } from "./student.ts";
