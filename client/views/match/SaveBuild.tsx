import { useState } from "preact/hooks";
import type { Build } from "../../../shared/model/build.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { navigate } from "../../app/router.ts";
import { ApiError, api } from "../../state/api.ts";
import { keep } from "../../state/book.ts";
import { changes } from "../../state/build.ts";
import { withChanges } from "../../state/handles.ts";
import { TextField } from "../../ui/Field.tsx";

const MOST_LETTERS = 120;

/** Keeps what is tried as a build of its own. */
export function SaveBuild({ build }: { build: Build }) {
  const [name, setName] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  if (name === null)
    return (
      <button type="button" onClick={() => setName(`${build.name}, changed`.slice(0, MOST_LETTERS))}>
        Save as a new build
      </button>
    );
  const save = async (event: Event) => {
    event.preventDefault();
    if (name.trim() === "") return setProblem("A name is needed, for example “Pane crawler, wider gap”.");
    try {
      const record = await api.post<StoredOf<"builds">>("/builds", {
        ...withChanges(build, changes.peek()),
        name: name.trim(),
      });
      keep("builds", record);
      changes.value = {};
      setName(null);
      navigate("match", record.id);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.field("name") ?? error.message);
    }
  };
  return (
    <form class="save-build" onSubmit={(event) => void save(event)}>
      <TextField label="Name of the new build" value={name} onChange={setName} error={problem} />
      <button type="submit" class="primary">
        Save
      </button>{" "}
      <button type="button" onClick={() => setName(null)}>
        Cancel
      </button>
    </form>
  );
}
