import { useEffect } from "preact/hooks";
import { Later } from "../ui/Later.tsx";
import { shownWorking } from "../ui/working/shown.ts";
import { route } from "./router.ts";

const dialog = () => import("../ui/working/WorkingDialog.tsx");

/** The working that was asked for, over the view where it was; another view closes it. */
export function WorkingOver() {
  const { view, id } = route.value;
  useEffect(
    () => () => {
      shownWorking.value = null;
    },
    [view, id],
  );
  const shown = shownWorking.value;
  return shown && <Later load={dialog} what="The working" props={shown} atOnce />;
}
