import type { ComponentChildren } from "preact";
import { Subscripts } from "../../ui/Subscripts.tsx";
import { Terms } from "../../ui/Terms.tsx";

export interface PageProps {
  /** answer and charts */
  readonly picture: ComponentChildren;
  /** what it means: figures, next readings, tests, the chosen reading */
  readonly meaning: ComponentChildren;
}

/** One part's page: the picture, and beside it (on a phone below) what it means. */
export function Page({ picture, meaning }: PageProps) {
  return (
    <>
      <div class="curves-picture">{picture}</div>
      <aside class="curves-meaning" aria-label="What it means">
        {meaning}
      </aside>
    </>
  );
}

export interface Fact {
  readonly label: string;
  readonly text: ComponentChildren;
}

/** Figures, a line each. */
export function Facts({ facts }: { facts: readonly Fact[] }) {
  return (
    <dl class="curves-facts">
      {facts.map(({ label, text }) => (
        <div key={label}>
          <dt>
            <Terms text={label} />
          </dt>
          <dd>{typeof text === "string" ? <Subscripts text={text} /> : text}</dd>
        </div>
      ))}
    </dl>
  );
}

/** What a fit warns of, once each. */
export function Notes({ notes }: { notes: readonly { readonly code: string; readonly message: string }[] }) {
  if (notes.length === 0) return null;
  return (
    <ul class="curves-notes">
      {notes.map((note) => (
        <li key={note.code + note.message}>{note.message}</li>
      ))}
    </ul>
  );
}
