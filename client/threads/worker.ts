import { markOfLanguage, setDecimalMark } from "../../shared/units/decimalMark.ts";
import { type Ahead, done, type Posted, TASKS } from "./tasks.ts";

setDecimalMark(markOfLanguage(navigator.language));

/** Any task, away from the page's own thread: one question, one reply. */
addEventListener("message", ({ data }: MessageEvent<Posted | Ahead>) => {
  if ("ahead" in data) TASKS[data.ahead]().catch(reportError);
  else done(data).then(postMessage, reportError);
});
