import { showsBuild } from "../state/build.ts";
import { VerdictMark } from "../ui/verdict/VerdictMark.tsx";
import { route } from "./router.ts";

/** Beside the build's name, on every view of it: what it comes to. */
export function BuildStanding() {
  if (!showsBuild(route.value.view)) return null;
  return (
    <span class="build-standing">
      <VerdictMark />
    </span>
  );
}
