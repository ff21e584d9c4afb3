import { encode } from "uqr";

/** Modules of light around a QR code (ISO/IEC 18004, 9.1). */
const QUIET_ZONE = 4;

/** A QR code as a drawing. */
export interface QrDrawing {
  /** dark modules, as a path on a square of {@link size} */
  readonly path: string;
  /** modules along an edge, the light around it included */
  readonly size: number;
}

/** @returns the QR code of a text, read even where 15 % of it can't be seen */
export function qrDrawing(text: string): QrDrawing {
  const { data, size } = encode(text, { ecc: "M", border: QUIET_ZONE });
  const path = data.flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])));
  return { path: path.join(""), size };
}

/** @returns a code in groups of four, to be read off and typed */
export const inGroups = (code: string): string => code.replace(/(.{4})(?=.)/g, "$1 ");

/** @returns the address that pairs whoever opens it; what stands behind the # is never sent by a browser */
export const pairingAddress = (address: string, code: string): string => `${address}/pair#${code}`;
