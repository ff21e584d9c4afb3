import { markOfLanguage, setDecimalMark } from "../../shared/units/decimalMark.ts";
import { type ShownUnits, showUnitsOf } from "../../shared/units/showing.ts";
import { type Ahead, done, type Posted, TASKS } from "./tasks.ts";

setDecimalMark(markOfLanguage(navigator.language));

/** Said with each question: its answer may be sentences. */
let units: ShownUnits = {};
showUnitsOf(() => units);

/** Any task, away from the page's own thread: one question, one reply. */
addEventListener("message", ({ data }: MessageEvent<Posted | Ahead>) => {
  if ("ahead" in data) TASKS[data.ahead]().catch(reportError);
  else {
    units = data.units;
    done(data).then(postMessage, reportError);
  }
});
