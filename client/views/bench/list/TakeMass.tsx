import { useState } from "preact/hooks";
import { findById } from "../../../../shared/book/book.ts";
import { weighingOf } from "../../../../shared/book/weighed.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";
import { currentBook } from "../../../state/book.ts";
import { saveBuild } from "../../../state/saveBuild.ts";
import { useTests } from "../../../state/tests/useTests.ts";
import { keepFocus } from "../../../ui/keepFocus.ts";
import { massText } from "../running/weighIn.ts";

/** Masses that differ by less than this share are the same number, rounded [-]. */
const SAME = 1e-6;

/** The newest weigh-in of a whole build: its mass taken over by the build, with its uncertainty, where the build says another. */
export function TakeMass({ test }: { readonly test: StoredOf<"tests"> }) {
  const { data } = test;
  const named = data.kind === "weigh-in" && data.weighed === "build" ? data.build : null;
  return named === null ? null : <TakeMassOf test={test} named={named} />;
}

function TakeMassOf({ test, named }: { readonly test: StoredOf<"tests">; readonly named: string }) {
  const [failure, setFailure] = useState<string | null>(null);
  const book = currentBook.value;
  const tests = useTests(() => [{ kind: "weigh-in", names: { build: named } }], named);
  const build = book && findById(book.builds, named);
  const weighed = build && tests === "here" ? weighingOf(book, build.id) : null;
  if (!build || weighed?.test !== test.id) return null;
  const { mass, uncertainty } = weighed;
  const { vehicle, uncertainty: stated } = build.data;
  if (vehicle.mass !== undefined && Math.abs(vehicle.mass - mass) <= SAME * mass) {
    return <p class="quiet small">{build.data.name} has this mass.</p>;
  }
  const take = async () => {
    const { "vehicle.mass": _before, ...others } = stated;
    const known: Record<string, number> = uncertainty === null ? {} : { "vehicle.mass": uncertainty };
    const data = {
      ...build.data,
      vehicle: { ...vehicle, mass },
      uncertainty: { ...others, ...known },
    };
    setFailure(await saveBuild(build, data));
  };
  return (
    <p>
      <button type="button" class="plain" onMouseDown={keepFocus} onClick={() => void take()}>
        Take {massText(weighed)} as the mass of {build.data.name}
      </button>
      {failure && (
        <span class="field-error" role="alert">
          {failure}
        </span>
      )}
    </p>
  );
}
