import { useState } from "preact/hooks";
import type { Ledger } from "../../../shared/book/mass/ledger.ts";
import type { Build } from "../../../shared/model/build.ts";
import { BUILD } from "../../../shared/model/limits.ts";
import { isGood, type NumberSpec, needed, readNumber } from "../../../shared/units/readNumber.ts";
import { headed } from "../../../shared/units/showing.ts";
import { NumberField } from "../../ui/NumberField.tsx";
import { massText } from "./massWords.ts";

const WHOLE: NumberSpec = { dimension: "mass", limits: BUILD.vehicle.mass, example: "180 g" };
const STANDARD: NumberSpec = { dimension: "mass", limits: { min: 0 }, example: "1 g" };

export interface WholeMassProps {
  readonly build: Build;
  readonly ledger: Ledger;
  /** @returns why it was refused; null where it was stored */
  readonly onSave: (build: Build) => Promise<string | null>;
}

function withWhole(build: Build, mass: number | undefined, uncertainty: number | null): Build {
  const { mass: _before, ...vehicle } = build.vehicle;
  const { "vehicle.mass": _unsure, ...others } = build.uncertainty;
  return {
    ...build,
    vehicle: mass === undefined ? vehicle : { ...vehicle, mass },
    uncertainty:
      mass === undefined || uncertainty === null ? others : { ...others, "vehicle.mass": uncertainty },
  };
}

/** The number that is typed: read, then stored in the place of the sum. */
function useTypedWhole({ build, onSave }: WholeMassProps) {
  const [text, setText] = useState("");
  const [unsure, setUnsure] = useState("");
  const [problems, setProblems] = useState<{ mass?: string; unsure?: string }>({});
  const [refusal, setRefusal] = useState<string | null>(null);
  const save = async (event: Event) => {
    event.preventDefault();
    const mass = text.trim() === "" ? needed("The mass", WHOLE) : readNumber(WHOLE, text);
    const standard = unsure.trim() === "" ? null : readNumber(STANDARD, unsure);
    if (!isGood(mass)) return setProblems({ mass: mass.message });
    if (standard !== null && !isGood(standard)) return setProblems({ unsure: standard.message });
    setProblems({});
    const refused = await onSave(withWhole(build, mass.value, standard?.value ?? null));
    setRefusal(refused);
    if (refused !== null) return;
    setText("");
    setUnsure("");
  };
  const drop = async () => setRefusal(await onSave(withWhole(build, undefined, null)));
  return { text, setText, unsure, setUnsure, problems, refusal, save, drop };
}

/** The whole vehicle as one number, which counts in the place of the sum; and the way back to the sum. */
export function WholeMass(props: WholeMassProps) {
  const { build, ledger } = props;
  const { text, setText, unsure, setUnsure, problems, refusal, save, drop } = useTypedWhole(props);
  const isWhole = ledger.whole !== null;
  return (
    <details class="mass-whole">
      <summary>{isWhole ? "The whole, as one number" : "Weigh the whole vehicle"}</summary>
      <p class="small">
        {isWhole
          ? `${massText(ledger.mass.value)} counts as everything on board; the lines say what of.`
          : "One number for everything on board takes the place of the sum."}
      </p>
      <form onSubmit={(event) => void save(event)} noValidate>
        <NumberField
          label={headed("Everything on board", "mass")}
          spec={WHOLE}
          text={text}
          error={problems.mass}
          onText={setText}
        />
        <NumberField
          label={headed("Standard uncertainty", "mass")}
          spec={STANDARD}
          text={unsure}
          error={problems.unsure}
          hint="0 unless given"
          onText={setUnsure}
        />
        <button type="submit">Let this number count</button>
      </form>
      {isWhole && build.ledger.length > 0 && (
        <p>
          <button type="button" onClick={() => void drop()}>
            {`Let the sum count, ${massText(ledger.sum.value)}`}
          </button>
        </p>
      )}
      {refusal && (
        <p class="field-error" role="alert">
          {refusal}
        </p>
      )}
    </details>
  );
}
