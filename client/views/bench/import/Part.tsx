import { useSaid } from "../../../ui/useSaid.ts";

interface PartProps {
  readonly what: string;
  /** 0 to 1; null: nothing is under way */
  readonly part: number | null;
  /** given up by the maker; without it there is no button */
  readonly onStop?: () => void;
}

/** How far something has come that takes a while. */
export function Part({ what, part, onStop }: PartProps) {
  useSaid(part === null ? null : `${what}…`, "said");
  if (part === null) return null;
  return (
    <p class="bench-part">
      <label>
        {what}… <progress max={1} value={part} /> {Math.round(part * 100)} %
      </label>{" "}
      {onStop && (
        <button type="button" onClick={onStop}>
          Stop
        </button>
      )}
    </p>
  );
}
