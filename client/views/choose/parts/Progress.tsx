import type { Book } from "../../../../shared/book/book.ts";
import type { ChooseJob } from "../../../../shared/model/api/choose.ts";
import type { BestCombination } from "../state/job.ts";
import { bestText, progressText } from "../words/searchSentences.ts";

export interface ProgressProps {
  readonly job: ChooseJob;
  readonly book: Book;
  /** of most margin so far */
  readonly best: BestCombination | null;
  readonly lost: boolean;
  readonly onCancel: () => void;
}

/** How far the solving is, and the way out of it. */
export function Progress({ job, book, best, lost, onCancel }: ProgressProps) {
  const text = progressText(job);
  return (
    <div class="choose-progress">
      <progress max={job.sets} value={job.solved} aria-label="Combinations solved" />
      <p aria-live="off">
        {text}
        {best && ` Best so far: ${bestText(book, best)}.`}
      </p>
      {lost && (
        <p class="bad" role="alert">
          The server does not answer. Trying again every second.
        </p>
      )}
      <button type="button" onClick={onCancel}>
        Cancel
      </button>
    </div>
  );
}
