import type { ButtonHTMLAttributes, TargetedMouseEvent } from "preact";

export interface BusyButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** what it began is under way */
  readonly busy: boolean;
  readonly type: "button" | "submit";
  readonly onClick?: (event: TargetedMouseEvent<HTMLButtonElement>) => void;
}

/** A button that does nothing while what it began is under way, and keeps the focus meanwhile. */
export function BusyButton({ busy, onClick, children, ...rest }: BusyButtonProps) {
  return (
    <button
      {...rest}
      aria-disabled={busy ? "true" : undefined}
      onClick={(event) => {
        if (busy) event.preventDefault();
        else onClick?.(event);
      }}
    >
      {children}
    </button>
  );
}
