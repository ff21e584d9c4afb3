import type { Book } from "../../../shared/book/resolve.ts";
import type { Build } from "../../../shared/model/build.ts";
import { withdrawnOf } from "../../../shared/model/withdrawn.ts";
import { overlayIds, toAddress } from "../../state/build.ts";
import { onceTested, testsBehind } from "../../state/tests/useTests.ts";
import { compareAddress } from "../compare/asked.ts";

/** Most builds that a reader can still tell apart in one picture; as many line styles are there. */
export const MOST_OVERLAYS = 7;

/** Fan against leak and thrust against speed share no axes. */
function cannotLayOver(book: Book, shown: Build, other: Build): string | null {
  const kindOf = ({ rotor }: Build) => book.rotors.find(({ id }) => id === rotor)?.data.kind ?? "ducted";
  if (kindOf(shown) === kindOf(other)) return null;
  return kindOf(other) === "propeller"
    ? "a propeller has no fan curve to lay over; open it by itself"
    : "a ducted rotor has no thrust curve to lay over; open it by itself";
}

function toggle(id: string, build: Build): void {
  onceTested(testsBehind([build]), () => {
    const now = overlayIds.peek();
    overlayIds.value = now.includes(id) ? now.filter((each) => each !== id) : [...now, id];
    toAddress();
  });
}

/** Other builds to lay over the picture. */
export function OverlayPicker({ book, shown }: { book: Book; shown: string }) {
  const laidOver = overlayIds.value;
  const others = book.builds.filter(
    ({ id, data }) => id !== shown && (laidOver.includes(id) || withdrawnOf(data) === null),
  );
  if (others.length === 0) return null;
  const here = book.builds.find((build) => build.id === shown);
  const why = (build: Build) => here && cannotLayOver(book, here.data, build);
  const laid = laidOver.filter((id) => others.some((build) => build.id === id));
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
                disabled={
                  !laid.includes(build.id) && (laid.length >= MOST_OVERLAYS || Boolean(why(build.data)))
                }
                onChange={() => toggle(build.id, build.data)}
              />{" "}
              {build.data.name}
              {why(build.data) && <small class="quiet"> – {why(build.data)}</small>}
            </label>
          </li>
        ))}
      </ul>
      {laid.length > 0 && (
        <p>
          <a href={compareAddress([shown, ...laid])}>Compare them, figure by figure</a>
        </p>
      )}
    </details>
  );
}
