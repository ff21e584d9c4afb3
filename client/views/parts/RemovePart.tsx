import { useState } from "preact/hooks";
import type { Stored } from "../../../shared/model/record.ts";
import { navigate } from "../../app/router.ts";
import { ApiError } from "../../state/api.ts";
import { deleteRecord } from "../../state/saveRecord.ts";
import type { FormSpec } from "./spec.ts";

/** Deletes a record after a second word; one in use stays, and the builds that use it are named. */
export function RemovePart({ form, record }: { form: FormSpec; record: Stored<unknown> }) {
  const [asked, setAsked] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const remove = async () => {
    try {
      await deleteRecord(form.collection, record);
      navigate("parts");
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setAsked(false);
      setProblem(error.message);
    }
  };
  return (
    <span class="remove-part">
      {asked ? (
        <>
          Delete this {form.one}?{" "}
          <button type="button" onClick={() => void remove()}>
            Yes, delete
          </button>{" "}
          <button type="button" data-next onClick={() => setAsked(false)}>
            Keep it
          </button>
        </>
      ) : (
        <button type="button" class="plain" onClick={() => setAsked(true)}>
          Delete
        </button>
      )}
      {problem && (
        <span class="field-error" role="alert">
          {problem}
        </span>
      )}
    </span>
  );
}
