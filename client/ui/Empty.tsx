import type { ComponentChildren } from "preact";

export interface EmptyProps {
  /** what would be here, one sentence */
  readonly title: string;
  /** what fills it */
  readonly children?: ComponentChildren;
  readonly action?: { readonly label: string; readonly href: string };
}

/** A place with nothing in it yet: what fills it, and one button. */
export function Empty({ title, children, action }: EmptyProps) {
  return (
    <div class="empty">
      <h1>{title}</h1>
      {children}
      {action && (
        <p>
          <a class="button primary" href={action.href}>
            {action.label}
          </a>
        </p>
      )}
    </div>
  );
}
