import { isDemo } from "../../state/book.ts";
import { changes } from "../../state/build.ts";
import { version } from "../../state/version.ts";
import { BusyButton } from "../../ui/BusyButton.tsx";
import { download, plainName } from "../../ui/download.ts";
import { fitPaper } from "./fitPaper.ts";
import { pageOf } from "./page.ts";
import { recordOf } from "./record.ts";
import type { Sheet } from "./useSheet.ts";

/** Prints the sheet, or keeps it as a page or as data; waits until all of it is worked out. */
export function SaveSheet({ sheet }: { readonly sheet: Sheet }) {
  const { name } = sheet.outcome.build;
  const file = plainName(`sheet ${name}`);
  const save = (type: string, ending: string, text: string) =>
    download(new Blob([text], { type }), `${file}.${ending}`);
  const page = () => {
    const paper = document.querySelector<HTMLElement>(".sheet");
    if (!paper) return;
    fitPaper(paper);
    save("text/html", "html", pageOf(paper, `Sheet of ${name}`));
  };
  const data = () => {
    const made = { at: new Date(), version, demo: isDemo.value, tried: changes.value };
    save("application/json", "json", `${JSON.stringify(recordOf(sheet, made), null, 2)}\n`);
  };
  return (
    <section class="sheet-save" aria-label="Keep this sheet">
      <BusyButton type="button" busy={sheet.busy} onClick={() => window.print()}>
        Print
      </BusyButton>
      <BusyButton type="button" busy={sheet.busy} onClick={page}>
        Save as a page
      </BusyButton>
      <BusyButton type="button" busy={sheet.busy} onClick={data}>
        Save as JSON
      </BusyButton>
      <span class="quiet small">{sheet.busy ? "Working it out…" : "A page or two on A4 or Letter."}</span>
    </section>
  );
}
