import { timeText } from "../../../shared/decide/verdict/figures.ts";
import type { Board } from "../../../shared/physics/working.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { Mark } from "../../ui/Mark.tsx";
import { ScrollTable } from "../../ui/ScrollTable.tsx";
import { FigureOf } from "../../ui/working/FigureOf.tsx";
import { type Answered, bestOf, type Sized } from "./answer.ts";
import type { Put } from "./question.ts";
import { kvText, powerText, sizeText, speedText, warmText } from "./sizeWords.ts";
import { bestBoard } from "./workings.ts";

interface Props {
  readonly put: Put;
  readonly answered: Answered;
  readonly shown: Sized;
  readonly onShow: (family: string) => void;
}

/** The best size of each family, one line each; the one that is chosen stands in the picture. */
export function BestTable({ put, answered, shown, onShow }: Props) {
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
            <FamilyRow
              key={family.id}
              family={family}
              board={() => bestBoard(put, answered, family)}
              isShown={family.id === shown.id}
              onShow={onShow}
            />
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
  board,
  isShown,
  onShow,
}: {
  family: Sized;
  board: () => Board;
  isShown: boolean;
  onShow: Props["onShow"];
}) {
  const best = bestOf(family);
  const figure = (title: string, text: string) => (
    <FigureOf board={board} title={title}>
      {text}
    </FigureOf>
  );
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
          <td>{figure("power from the pack", powerText(best.packPower))}</td>
          <td>{figure("winding that is wanted", kvText(best.kv))}</td>
          <td>{figure("speed", speedText(best.speed))}</td>
          <td>
            {best.burstFactor === null
              ? "not known"
              : figure("burst speed over its own", `${formatFixed(best.burstFactor, 1)} × that`)}
          </td>
          <td>
            {best.windingTemperature === null
              ? "not known"
              : figure("settled temperature of the winding", warmText(best.windingTemperature))}
          </td>
          <td>
            {best.holdTime === null ? "not known" : figure("time that it does so", timeText(best.holdTime))}
          </td>
        </>
      ) : (
        <td colSpan={7}>{whyNone(family)}</td>
      )}
    </tr>
  );
}
