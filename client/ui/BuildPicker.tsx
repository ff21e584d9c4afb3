import { href, navigate, route } from "../app/router.ts";
import { currentBook } from "../state/book.ts";
import { current } from "../state/build.ts";

/** Which build is on the screen, at the right end of the header. */
export function BuildPicker() {
  const builds = currentBook.value?.builds ?? [];
  if (builds.length === 0) return null;
  return (
    <span class="build-picker">
      <label>
        <span class="quiet">build:</span>{" "}
        <select
          value={current.value?.id ?? ""}
          onChange={(event) => navigate(route.value.view, event.currentTarget.value)}
        >
          {!current.value && <option value="">choose a build</option>}
          {builds.map((build) => (
            <option key={build.id} value={build.id}>
              {build.data.name}
            </option>
          ))}
        </select>
      </label>
      {current.value && (
        <a class="small" href={href("parts", `builds/${current.value.id}`)}>
          edit<span class="visually-hidden"> this build</span>
        </a>
      )}
    </span>
  );
}
