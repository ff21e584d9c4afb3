import type { Bench } from "../../../shared/book/resolve.ts";
import { overlayIds, toAddress } from "../../state/build.ts";

/** Most builds that a reader can still tell apart in one picture; as many line styles are there. */
export const MOST_OVERLAYS = 7;

function toggle(id: string): void {
  const now = overlayIds.peek();
  overlayIds.value = now.includes(id) ? now.filter((each) => each !== id) : [...now, id];
  toAddress();
}

/** Other builds to lay over the picture. */
export function OverlayPicker({ bench, shown }: { bench: Bench; shown: string }) {
  const others = bench.builds.filter((build) => build.id !== shown);
  if (others.length === 0) return null;
  const laid = overlayIds.value.filter((id) => others.some((build) => build.id === id));
  return (
    <details class="overlay-picker" open={laid.length > 0}>
      <summary>Lay other builds over it</summary>
      <ul>
        {others.map((build) => (
          <li key={build.id}>
            <label>
              <input
                type="checkbox"
                checked={laid.includes(build.id)}
                disabled={laid.length >= MOST_OVERLAYS && !laid.includes(build.id)}
                onChange={() => toggle(build.id)}
              />{" "}
              {build.data.name}
            </label>
          </li>
        ))}
      </ul>
    </details>
  );
}
