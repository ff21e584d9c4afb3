import type { Build } from "../../../shared/model/build.ts";
import type { LedgerLine } from "../../../shared/model/ledger.ts";
import { type LineDraft, readLine, withLine } from "./line.ts";

/** A line that is typed, and whose place it takes; null: a new one. */
export interface Typing {
  readonly draft: LineDraft;
  readonly at: number | null;
}

/** @returns the lines of the ledger besides the one that is typed */
export const othersOf = ({ ledger }: Build, at: number | null): LedgerLine[] =>
  ledger.filter((_, i) => i !== at);

/** @returns the build as it would be with the line that is typed, as soon as that can be read */
export function withTyped(build: Build, typing: Typing | null): Build {
  const read = typing && readLine(typing.draft, othersOf(build, typing.at));
  return typing && read && "line" in read ? withLine(build, read.line, typing.at) : build;
}
