import { useState } from "preact/hooks";
import { ApiError, api } from "../state/api.ts";
import { isDemo } from "../state/book.ts";
import { replaceBook } from "../state/replaceBook.ts";
import { navigate } from "./router.ts";

/** Says that the numbers are invented, and lets the user start with a bench of their own. */
export function Banner() {
  const [asked, setAsked] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  if (!isDemo.value) return null;
  const empty = async () => {
    try {
      await replaceBook(async () => {
        await api.post("/bench/empty", {});
        setAsked(false);
        navigate("match");
      });
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
    }
  };
  return (
    <aside class="shell-banner" aria-label="Demo">
      <p>Demo numbers, invented: a glasshouse crawler that never was.</p>
      {asked ? (
        <>
          <p>Empty the bench? A copy of this book is kept beside its file.</p>
          <button type="button" class="plain" onClick={() => void empty()}>
            Yes, start empty
          </button>
          <button type="button" class="plain" data-next onClick={() => setAsked(false)}>
            Keep the demo
          </button>
        </>
      ) : (
        <button type="button" class="plain" onClick={() => setAsked(true)}>
          Start an empty bench
        </button>
      )}
      {problem && <p class="bad">{problem}</p>}
    </aside>
  );
}
