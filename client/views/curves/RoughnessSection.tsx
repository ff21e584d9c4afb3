import type { SurfaceRoughness } from "../../../shared/book/roughnessBasis.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { counted } from "../../ui/count.ts";
import { Mark } from "../../ui/Mark.tsx";
import { roughnessText } from "../../ui/roughnessWords.ts";
import { FurtherFigure, RoughnessFigure } from "../../ui/working/RoughnessFigure.tsx";

/** The allowance that counts, and whether it is stated or was measured separately. */
export function Allowance({ roughness }: { readonly roughness: SurfaceRoughness }) {
  return (
    <>
      <RoughnessFigure roughness={roughness} /> {roughness.basis === "stated" && <Mark word="stated" />}
    </>
  );
}

export interface RoughnessSectionProps {
  readonly roughness: SurfaceRoughness;
  readonly surface: StoredOf<"surfaces">;
}

/** Roughness allowance: what the surface states, what leak tests measure separately, what is missing. */
export function RoughnessSection({ roughness, surface }: RoughnessSectionProps) {
  const { told, against, basis, missing } = roughness;
  const stated = roughnessText(surface.data.roughness, null);
  return (
    <section>
      <h2>Roughness</h2>
      {told && against && (
        <p>
          The lip stands <FurtherFigure roughness={roughness} /> further off here than on {against.data.name},
          by {counted(told.tests, "leak test")} of the same skirt at the same gap.{" "}
          {basis === "measured separately" &&
            `The book states ${stated}; predictions take what the tests tell.`}
        </p>
      )}
      {told && told.inflation > 1 && (
        <p class="quiet small">
          The tests differ {formatFixed(told.inflation, 1)} times as much as their readings scatter: the
          uncertainty is widened by that.
        </p>
      )}
      {missing && <p>{missing}</p>}
    </section>
  );
}
