import { Problem } from "../Problem.tsx";
import { Merge, type MergeProps } from "./Merge.tsx";

export interface ChangedElsewhereProps {
  /** what was not saved: "test" */
  readonly what: string;
  /** null until the newer state is read */
  readonly conflicts: MergeProps["conflicts"] | null;
  readonly onMerge: MergeProps["onMerge"];
  /** why the newer state could not be read */
  readonly failure: string | null;
  readonly onRetry: () => void;
}

/** Two corrections of one record: what to choose of each, field by field. */
export function ChangedElsewhere({ what, conflicts, onMerge, failure, onRetry }: ChangedElsewhereProps) {
  return (
    <Problem
      message={`Not saved: this ${what} was changed elsewhere meanwhile. What you typed is kept. Choose field by field, then save.`}
    >
      {conflicts && <Merge conflicts={conflicts} onMerge={onMerge} />}
      {failure && (
        <p class="field-error">
          {failure}{" "}
          <button type="button" class="plain" onClick={onRetry}>
            Try again
          </button>
        </p>
      )}
    </Problem>
  );
}
