import { resolveBuild } from "../../../shared/book/resolve.ts";
import { firstSizable } from "../../../shared/book/size/sizable.ts";
import { href } from "../../app/router.ts";
import { solve } from "../../state/outcome.ts";
import { Missing } from "../../ui/Missing.tsx";
import type { Settings } from "./settings.ts";
import type { Subject } from "./subject.ts";

/** Why nothing can be sized yet, and what gives it. */
export function Lacking({ subject, settings }: { subject: Subject; settings: Settings }) {
  const { book, build, need } = subject;
  const hasFamily = firstSizable(book, "ducted") !== null || firstSizable(book, "propeller") !== null;
  return (
    <section class="page-main" aria-label="What is missing">
      {!hasFamily && (
        <>
          <p>
            No rotor family of the book has a curve yet. Log a curve test, or add a rotor from its drawing
            beside this: its curve is estimated until then.
          </p>
          <a class="button primary" href={href("bench", "new/curve")}>
            Log a curve test
          </a>
        </>
      )}
      {hasFamily && !need && (
        <Missing outcome={solve(book, { ...build.data, motor: settings.motor })} build={build.id} />
      )}
      {hasFamily && need && (
        <ul class="missing">
          {resolveBuild(book, build.data).missing.map(({ path, message }) => (
            <li key={path}>{message}</li>
          ))}
        </ul>
      )}
    </section>
  );
}
