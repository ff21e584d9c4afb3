import { useState } from "preact/hooks";
import type { Build } from "../../../shared/model/build.ts";
import { navigate, stayer } from "../../app/router.ts";
import { ApiError } from "../../state/api.ts";
import { changes } from "../../state/build.ts";
import { withChanges } from "../../state/handles.ts";
import { notice } from "../../state/notice.ts";
import { type Sending, saveProblem, sendRecord } from "../../state/sendRecord.ts";
import { BusyButton } from "../../ui/BusyButton.tsx";
import { TextField } from "../../ui/Field.tsx";

const MOST_LETTERS = 120;

/** Keeps what is tried as a build of its own. */
export function SaveBuild({ build }: { build: Build }) {
  const [name, setName] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [sending, setSending] = useState<Sending<Build> | null>(null);
  if (name === null)
    return (
      <button type="button" onClick={() => setName(`${build.name}, changed`.slice(0, MOST_LETTERS))}>
        Save as a new build
      </button>
    );
  const save = async (event: Event) => {
    event.preventDefault();
    if (name.trim() === "") return setProblem("A name is needed, for example “Pane crawler, wider gap”.");
    const data = { ...withChanges(build, changes.peek()), name: name.trim() };
    const under = sendRecord<Build>("builds", null, data);
    setSending(under);
    const isHere = stayer();
    try {
      const record = await under.outcome;
      setName(null);
      if (!(record && isHere())) return;
      changes.value = {};
      navigate("match", record.id);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      const why = error.field("name") ?? saveProblem(error, true);
      if (!isHere()) notice.value = `The build “${data.name}” was not saved. ${why}`;
      setProblem(why);
    } finally {
      setSending(null);
    }
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
