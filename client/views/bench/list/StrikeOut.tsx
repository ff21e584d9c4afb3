import type { StoredOf } from "../../../../shared/model/record.ts";
import { withdraw } from "../../../state/withdraw.ts";
import { GiveReason } from "../../../ui/GiveReason.tsx";

interface StrikeOutProps {
  readonly test: StoredOf<"tests">;
  readonly onDone: () => void;
}

/** Says why a test is struck out: it stays in the book, and no figure is based on it. */
export function StrikeOut({ test, onDone }: StrikeOutProps) {
  return (
    <GiveReason
      label="Struck out because"
      note="It stays in the list with the reason; no figure is based on it."
      action="Strike it out"
      onReason={async (reason) => (await withdraw("tests", test, reason)).problem}
      onDone={onDone}
    />
  );
}
