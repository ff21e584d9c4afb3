import { useState } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import type { Build } from "../../../shared/model/build.ts";
import { changes } from "../../state/build.ts";
import { withTried } from "../../state/partsTried.ts";
import { nameWith, useNewBuild } from "../../state/useNewBuild.ts";
import { BusyButton } from "../../ui/BusyButton.tsx";
import { TextField } from "../../ui/Field.tsx";

/** Keeps what is tried as a build of its own. */
export function SaveBuild({ book, build }: { book: Book; build: Build }) {
  const [name, setName] = useState<string | null>(null);
  const { problem, setProblem, sending, make } = useNewBuild("match");
  if (name === null)
    return (
      <button type="button" onClick={() => setName(nameWith(build.name, ", changed"))}>
        Save as a new build
      </button>
    );
  const save = async (event: Event) => {
    event.preventDefault();
    if (name.trim() === "") return setProblem("A name is needed, for example “Pane crawler, wider gap”.");
    const data = { ...withTried(book, build, changes.peek()), name: name.trim() };
    await make(data, {
      answered: () => setName(null),
      stored: () => {
        changes.value = {};
      },
    });
  };
  const discard = () => {
    sending?.discard();
    setName(null);
  };
  return (
    <form class="save-build" onSubmit={(event) => void save(event)}>
      <TextField label="Name of the new build" value={name} onChange={setName} error={problem} />
      <BusyButton type="submit" class="primary" busy={sending !== null}>
        {sending ? "Saving…" : "Save"}
      </BusyButton>{" "}
      <button type="button" onClick={discard}>
        Cancel
      </button>
    </form>
  );
}
