import {
  type SymbolType,
  symbol,
  symbolAsterisk,
  symbolCircle,
  symbolDiamond2,
  symbolPlus,
  symbolSquare2,
  symbolTimes,
  symbolTriangle2,
} from "d3";

/** Outlined shapes, told apart without colour; the cross of a measured point comes first. */
const SHAPES: readonly SymbolType[] = [
  symbolPlus,
  symbolDiamond2,
  symbolTriangle2,
  symbolSquare2,
  symbolTimes,
  symbolCircle,
  symbolAsterisk,
];
const AREA = 44;

/** @returns the outline of the n-th test's symbol, centred on 0,0; after the last shape they begin again, larger */
export function shapePath(index: number): string {
  const round = Math.floor(index / SHAPES.length);
  return symbol(SHAPES[index % SHAPES.length], AREA * (1 + round))() ?? "";
}
