import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT, sourcesIn } from "./support/modules.ts";

/** What speaks by itself, and why the page's own voice can't do it. */
const OWN_VOICES: Readonly<Record<string, string>> = {
  "client/app/Sayings.tsx": "is that voice",
  "client/ui/working/WorkingDialog.tsx": "what lies outside an open dialog is not read",
  "client/views/choose/rows/CombinationTable.tsx": "the row that the arrow keys are on is read at once, each",
};

describe("what the client says to who can't see it change", () => {
  it("is said by one voice, once it rests: components ask useSaid or Status", () => {
    const speaking = sourcesIn("client").filter((file) =>
      /aria-live="(polite|assertive)"|role="(status|log)"|<output/.test(
        readFileSync(resolve(ROOT, file), "utf8"),
      ),
    );
    expect(speaking.sort()).toEqual(Object.keys(OWN_VOICES).sort());
  });
});
