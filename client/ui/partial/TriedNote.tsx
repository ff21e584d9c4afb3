import { href } from "../../app/router.ts";
import type { Changes } from "../../state/handles.ts";
import { isChanged } from "../../state/outcome.ts";
import { triedToQuery } from "../../state/partsTried.ts";

/** Says, in a view other than Match, that what is tried there counts. */
export function TriedNote({ id, tried }: { id: string; tried: Changes }) {
  if (!isChanged(tried)) return null;
  return (
    <p class="small">
      With what is <a href={href("match", id, triedToQuery(tried))}>tried in Match</a>, not as the build is
      stored.
    </p>
  );
}
