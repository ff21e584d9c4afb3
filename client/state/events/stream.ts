import type { ChangeEvent } from "../../../shared/model/api/book.ts";

/** What one reports who follows the book's event stream: a change, or whether the server can be reached. */
export type News = { readonly change: ChangeEvent } | { readonly connected: boolean };

const PATH = "/api/v1/events";
/** Pause before a stream that the browser gave up is opened again [ms]. */
const RETRY = 2_000;

/**
 * Follows the server's event stream. The browser itself reconnects after a break; a stream that it gave up, as after
 * an answer of 502, is opened again.
 *
 * @param report - receives each change, and the connection's state whenever it opens or breaks
 * @returns ends it
 */
export function followStream(report: (news: News) => void): () => void {
  let source: EventSource;
  let retry: ReturnType<typeof setTimeout> | undefined;
  const open = () => {
    source = new EventSource(PATH);
    source.addEventListener("open", () => report({ connected: true }));
    source.addEventListener("change", (event: MessageEvent<string>) =>
      report({ change: JSON.parse(event.data) as ChangeEvent }),
    );
    source.addEventListener("error", () => {
      report({ connected: false });
      if (source.readyState === EventSource.CLOSED) retry = setTimeout(open, RETRY);
    });
  };
  open();
  return () => {
    clearTimeout(retry);
    source.close();
  };
}
