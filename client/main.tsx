import { render } from "preact";
import { markOfLanguage, setDecimalMark } from "../shared/units/decimalMark.ts";
import { showUnitsOf } from "../shared/units/showing.ts";
import { carryFocus } from "./app/focus/carryFocus.ts";
import { startTitle } from "./app/pageTitle.ts";
import { startRouter } from "./app/router.ts";
import { Shell } from "./app/Shell.tsx";
import { showRoute } from "./app/shownView.ts";
import { startTheme } from "./app/theme.ts";
import { currentUnits, reload, workAhead } from "./state/book.ts";
import { calibrateAhead } from "./state/calibratedAhead.ts";
import { forgetOldDrafts, keepBesideOthers } from "./state/drafts.ts";
import { startEvents } from "./state/events.ts";

const root = document.getElementById("app");
if (!root) throw new Error("The page has no #app to draw into.");

const followed = startEvents();
setDecimalMark(markOfLanguage(navigator.language));
showUnitsOf(() => currentUnits.value);
startTheme();
workAhead(calibrateAhead);
forgetOldDrafts();
keepBesideOthers();
carryFocus();
startTitle();
startRouter((next) => void showRoute(next));
render(<Shell />, root);
void followed.then(reload);
