import { timeText } from "../../../shared/decide/verdict/figures.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { Mark } from "../../ui/Mark.tsx";
import { ScrollTable } from "../../ui/ScrollTable.tsx";
import { type Answered, bestOf, type Sized } from "./answer.ts";
import { kvText, powerText, sizeText, speedText, warmText } from "./sizeWords.ts";

interface Props {
  readonly answered: Answered;
  readonly shown: Sized;
  readonly onShow: (family: string) => void;
}

/** The best size of each family, one line each; the one that is chosen stands in the picture. */
export function BestTable({ answered, shown, onShow }: Props) {
  return (
    <ScrollTable label="The best size of each family">
      <table class="size-best">
        <thead>
          <tr>
            <th scope="col">Family</th>
            <th scope="col">Size</th>
            <th scope="col">From the pack</th>
            <th scope="col">Winding wanted</th>
            <th scope="col">Speed</th>
            <th scope="col">Bursts at</th>
            <th scope="col">Winding</th>
            <th scope="col">Holds for</th>
          </tr>
        </thead>
        <tbody>
          {answered.families.map((family) => (
            <FamilyRow key={family.id} family={family} isShown={family.id === shown.id} onShow={onShow} />
          ))}
        </tbody>
      </table>
    </ScrollTable>
  );
}

function whyNone({ problem, nearest, rows }: Sized): string {
  if (problem) return problem;
  const notes = new Set(rows.flatMap(({ notes: [first] }) => (first ? [first.message] : [])));
  const [why = "No size keeps every limit."] = notes;
  return nearest ? `No size keeps every limit: ${why}` : why;
}

function FamilyRow({
  family,
  isShown,
  onShow,
}: {
  family: Sized;
  isShown: boolean;
  onShow: Props["onShow"];
}) {
  const best = bestOf(family);
  return (
    <tr>
      <th scope="row">
        <label>
          <input type="radio" name="family" checked={isShown} onChange={() => onShow(family.id)} />{" "}
          {family.name}
        </label>{" "}
        {family.estimated && <Mark word="estimated" />} {best?.extrapolated && <Mark word="extrapolated" />}
      </th>
      {best && best.packPower !== null && best.kv !== null && best.speed !== null ? (
        <>
          <td>{sizeText(best.diameter)}</td>
          <td>{powerText(best.packPower)}</td>
          <td>{kvText(best.kv)}</td>
          <td>{speedText(best.speed)}</td>
          <td>{best.burstFactor === null ? "not known" : `${formatFixed(best.burstFactor, 1)} × that`}</td>
          <td>{best.windingTemperature === null ? "not known" : warmText(best.windingTemperature)}</td>
          <td>{best.holdTime === null ? "not known" : timeText(best.holdTime)}</td>
        </>
      ) : (
        <td colSpan={7}>{whyNone(family)}</td>
      )}
    </tr>
  );
}
