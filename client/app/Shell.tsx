import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { bookAsOf, currentBook, currentUnits, loadError, loadState, reload } from "../state/book.ts";
import { connected } from "../state/events.ts";
import { notice } from "../state/notice.ts";
import { otherVersion } from "../state/serverVersion.ts";
import { testsComing } from "../state/tests/read.ts";
import { version } from "../state/version.ts";
import { DocLink } from "../ui/Docs.tsx";
import { Explanation } from "../ui/explain/Explanation.tsx";
import { moment } from "../ui/moment.ts";
import { Problem } from "../ui/Problem.tsx";
import { Status } from "../ui/Status.tsx";
import { Banner } from "./Banner.tsx";
import { focusContent } from "./focus/carryFocus.ts";
import { Navigation, Places } from "./Navigation.tsx";
import { follow, type ViewName } from "./router.ts";
import { Sayings } from "./Sayings.tsx";
import { shownView, viewProblem } from "./shownView.ts";
import { chooseTheme, THEMES, type Theme, theme } from "./theme.ts";
import { UndoBar } from "./UndoBar.tsx";
import { WorkingOver } from "./WorkingOver.tsx";
import { WaitingNotes } from "./waiting/WaitingNotes.tsx";

/** A view that could not be loaded is asked for again once the server is heard. */
function useSecondTry(): void {
  const heard = connected.value;
  useEffect(() => {
    if (heard && viewProblem.peek() !== null) follow();
  }, [heard]);
}

/** What depends on the book keeps its place unseen until the book is there, so that nothing jumps when it comes. */
function useUnread(): void {
  const isUnread = currentBook.value === null && loadState.value === "loading";
  useLayoutEffect(() => {
    document.documentElement.classList.toggle("unread", isUnread);
  }, [isUnread]);
}

/** The page: header, the view that the address names, footer. */
export function Shell() {
  const loaded = shownView.value;
  const problem = viewProblem.value;
  useSecondTry();
  useUnread();
  const shown = useRef<ViewName | null>(null);
  useEffect(() => {
    if (!loaded) return;
    if (shown.current !== null && shown.current !== loaded.view) focusContent();
    shown.current = loaded.view;
  }, [loaded]);
  return (
    <>
      <a class="shell-skip" href="#main">
        Skip to the content
      </a>
      <Navigation />
      <Banner />
      {(loadState.value === "loading" || testsComing.value > 0) && (
        <div class="shell-loading" role="progressbar" aria-label="Reading the bench book" />
      )}
      <main id="main" class="shell-main" tabIndex={-1}>
        {problem && (
          <Problem message={problem}>
            <button type="button" onClick={follow}>
              Try again
            </button>
          </Problem>
        )}
        <OtherVersion />
        <Notice />
        <WaitingNotes />
        {loadState.value === "error" && <ReadingFailed />}
        {loaded && currentBook.value && <loaded.Component key={JSON.stringify(currentUnits.value)} />}
      </main>
      <Footer />
      <Places />
      <WorkingOver />
      <Explanation />
      <Sayings />
    </>
  );
}

function Notice() {
  if (notice.value === null) return null;
  const dismiss = () => {
    notice.value = null;
  };
  return (
    <Problem message={notice.value}>
      <button type="button" onClick={dismiss}>
        Dismiss
      </button>
    </Problem>
  );
}

/** What is typed in a form is kept over the reload, unless the browser keeps nothing. */
function OtherVersion() {
  if (otherVersion.value === null) return null;
  const message = `The server is version ${otherVersion.value} by now, this page is ${version}: it may show or save wrongly. What you typed in a form comes back when you reload the page.`;
  return (
    <Problem message={message}>
      <button type="button" onClick={() => location.reload()}>
        Reload the page
      </button>
    </Problem>
  );
}

function ReadingFailed() {
  return (
    <Problem message={`The bench book could not be read. ${loadError.value ?? ""}`}>
      <button type="button" onClick={() => void reload()}>
        Try again
      </button>
    </Problem>
  );
}

/** What the screen shows while there is no server. */
const whatIsShown = (): string =>
  bookAsOf.value === null
    ? "changes made elsewhere won't show."
    : `the book is shown as this device read it on ${moment(new Date(bookAsOf.value).toISOString())}.`;

function Footer() {
  return (
    <footer class="shell-footer">
      <span>The figures are estimates from your own tests, no certification.</span>
      <DocLink path="">Docs</DocLink>
      <UndoBar />
      {!connected.value && <Status>No connection to the server; {whatIsShown()}</Status>}
      <label>
        Colours{" "}
        <select value={theme.value} onChange={(event) => chooseTheme(event.currentTarget.value as Theme)}>
          {THEMES.map((each) => (
            <option key={each} value={each}>
              {each === "system" ? "as the device" : each}
            </option>
          ))}
        </select>
      </label>
    </footer>
  );
}
