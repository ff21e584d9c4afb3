import type { Kept } from "../state/drafts.ts";
import { Status } from "./Status.tsx";

interface AsLeftProps {
  /** what was typed before and not saved; null where the form begins anew */
  readonly kept: Kept<unknown> | null;
  readonly onStartOver: () => void;
}

/** @returns "today at 14:03", or the day, as the maker's own calendar has it */
function moment(at: number): string {
  const then = new Date(at);
  if (then.toDateString() === new Date().toDateString())
    return `today at ${then.toLocaleTimeString(undefined, { timeStyle: "short" })}`;
  return `on ${then.toLocaleDateString(undefined, { dateStyle: "long" })}`;
}

/** A form shows what was typed before: said, with a way to begin anew. */
export function AsLeft({ kept, onStartOver }: AsLeftProps) {
  if (!kept) return null;
  return (
    <Status class="small quiet">
      As you left it {moment(kept.at)}, not saved yet.{" "}
      <button type="button" class="plain" onClick={onStartOver}>
        Start over
      </button>
    </Status>
  );
}
