/** The fields that say why a record is out of use: a test is struck out, a part or a build retired. */
export const WITHDRAWAL_KEYS = ["struckOut", "retired"] as const;

export type WithdrawalKey = (typeof WITHDRAWAL_KEYS)[number];

/** @returns why a record is out of use; null while it is in use */
export function withdrawnOf(data: Partial<Readonly<Record<WithdrawalKey, unknown>>>): string | null {
  const why = data.struckOut ?? data.retired;
  return typeof why === "string" ? why : null;
}
