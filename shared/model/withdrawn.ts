/** The fields that say why a record is out of use: a test is struck out, a part or a build retired. */
export const WITHDRAWAL_KEYS = ["struckOut", "retired"] as const;

export type WithdrawalKey = (typeof WITHDRAWAL_KEYS)[number];

/** @returns why a record is out of use; null while it is in use */
export function withdrawnOf(data: Partial<Readonly<Record<WithdrawalKey, unknown>>>): string | null {
  const why = data.struckOut ?? data.retired;
  return typeof why === "string" ? why : null;
}

/**
 * What a list offers: records in use, and the one that is chosen already though it is retired since.
 *
 * @param records - all of a collection
 * @param chosen - id of the one that stands in the field; null where none does
 */
export function offered<
  T extends { readonly id: string; readonly data: Partial<Readonly<Record<"retired", unknown>>> },
>(records: readonly T[], chosen: string | null): T[] {
  return records.filter(({ id, data }) => id === chosen || withdrawnOf(data) === null);
}

/** @returns a part's name as a list shows it, with "retired" behind it where it is */
export function nameWithStanding(data: { readonly name: string; readonly retired?: unknown }): string {
  return data.retired === undefined ? data.name : `${data.name} (retired)`;
}
