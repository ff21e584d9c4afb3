import { createHash } from "node:crypto";
import { fitsOf, type Once } from "../../shared/book/bookFits.ts";
import { bookFits } from "../../shared/model/api/bookFits.ts";
import { bookIn } from "../threads/bookIn.ts";
import type { Answering, Found } from "./bookAnswers.ts";
import { jsonBytes } from "./jsonBytes.ts";
import type { Route } from "./route.ts";
import type { Service } from "./service.ts";
import { sendWhenDone } from "./waiting.ts";

/** A question of the book in a file. */
interface Asked {
  readonly file: string;
  /** what an answer that is kept was worked out from */
  readonly known: string | null;
}

interface Made {
  readonly from: string;
  readonly value: unknown;
}

/** What this thread made of each part last: a test that is written changes few of them. */
let made: ReadonlyMap<string, Made> = new Map();

function fitsAnew(file: string) {
  const next = new Map<string, Made>();
  const once: Once = (place, from, make) => {
    const before = made.get(place);
    const kept = before?.from === from ? before : { from, value: make() };
    next.set(place, kept);
    return kept.value as ReturnType<typeof make>;
  };
  const fits = fitsOf(bookIn(file), once);
  made = next;
  return fits;
}

/** @returns the answer as bytes of JSON, unless it is the one that is known */
export function bookFitsFound({ file, known }: Asked): Found {
  const text = jsonBytes(fitsAnew(file));
  const from = createHash("sha256").update(text).digest("hex");
  return { from, text: from === known ? null : text };
}

/** @returns what all tests come to as it is kept, worked out where it isn't */
export const bookFitsText = ({ store, threads, answers }: Answering): Promise<Uint8Array> =>
  answers.of("fits", (known) => threads.run("bookFits", { file: store.file, known }));

/** What all tests come to: a page of a long book reads this in their place. Worked out on a thread of its own, once for each state of the book. */
export function bookFitsRoutes(service: Service): Route[] {
  return [
    {
      method: "get",
      path: "/fits",
      tag: "fits",
      summary: "What the tests of the book come to, part by part, and how many there are of each",
      responses: { 200: { description: "without the tests' readings", schema: bookFits } },
      refusals: [429],
      serve: (_request, response) => sendWhenDone(response, () => bookFitsText(service)),
    },
  ];
}
