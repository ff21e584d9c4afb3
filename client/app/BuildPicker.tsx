import { nameWithStanding, offered } from "../../shared/model/withdrawn.ts";
import { currentBook } from "../state/book.ts";
import { current, showsBuild } from "../state/build.ts";
import { href, navigate, route } from "./router.ts";

/** Which build the build's group of views shows; from a view of another group it leads to Match. */
export function BuildPicker() {
  const builds = offered(currentBook.value?.builds ?? [], current.value?.id ?? null);
  const { view } = route.value;
  const show = (id: string) => navigate(showsBuild(view) ? view : "match", id);
  if (builds.length === 0) return <span class="build-picker" />;
  return (
    <span class="build-picker">
      <select
        aria-label="Build"
        value={current.value?.id ?? ""}
        onChange={(event) => show(event.currentTarget.value)}
      >
        {!current.value && <option value="">choose a build</option>}
        {builds.map((build) => (
          <option key={build.id} value={build.id}>
            {nameWithStanding(build.data)}
          </option>
        ))}
      </select>
      {current.value && (
        <a href={href("parts", `builds/${current.value.id}`)}>
          edit<span class="visually-hidden"> this build</span>
        </a>
      )}
    </span>
  );
}
