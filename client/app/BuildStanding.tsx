import { showsBuild } from "../state/build.ts";
import { VerdictMark } from "../ui/verdict/VerdictMark.tsx";
import { route } from "./router.ts";

/** Beside the build's name, on every view of it: what it comes to. Its place is kept on the others, so that the views' names don't move. */
export function BuildStanding() {
  return <span class="build-standing">{showsBuild(route.value.view) && <VerdictMark />}</span>;
}
