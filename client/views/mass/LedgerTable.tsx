import {
  type Ledger,
  type MassFigure,
  type MassLine,
  type PartLine,
  sumOf,
} from "../../../shared/book/mass/ledger.ts";
import type { Build } from "../../../shared/model/build.ts";
import { MASS_GROUPS } from "../../../shared/model/massGroups.ts";
import type { Board } from "../../../shared/physics/working.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import { FigureOf } from "../../ui/working/FigureOf.tsx";
import { BASIS_WORDS, groupTitle, halfBand, massText } from "./massWords.ts";

export interface LedgerTableProps {
  /** workings of the build on the screen, with what is typed and tried */
  readonly board: () => Board;
  readonly ledger: Ledger;
  readonly build: Build;
  readonly onEdit: (at: number) => void;
  readonly onRemove: (at: number) => void;
}

/** Where the record of a part is corrected. */
const partAddress = (build: Build, part: PartLine) => href("parts", `${part}s/${build[part]}`);

/** "4 × 13.5 g, weighed" */
function Known({ line: { quantity, mass, basis } }: { readonly line: MassLine }) {
  const pieces = Number.isInteger(quantity) ? formatFixed(quantity, 0) : String(quantity);
  return (
    <small>
      {quantity !== 1 && `${pieces} × ${massText(mass)}, `}
      {basis === "weighed" ? BASIS_WORDS[basis] : <span class="mark">{BASIS_WORDS[basis]}</span>}
    </small>
  );
}

interface CellsProps extends Pick<LedgerTableProps, "board"> {
  /** of the workings: of the mass, and of its band */
  readonly mass: string;
  readonly of: string;
  readonly figure: MassFigure;
  readonly isKnown?: boolean;
}

/** A mass and its band, each with its working. */
function Cells({ board, mass, of, figure, isKnown = true }: CellsProps) {
  const band = halfBand(figure);
  return (
    <>
      <td class="number">
        {isKnown ? (
          <FigureOf board={board} title={mass}>
            {massText(figure.value)}
          </FigureOf>
        ) : (
          "–"
        )}
      </td>
      <td class="number quiet">
        {band && (
          <FigureOf board={board} title={`± (90 %) of ${of}`}>
            {band}
          </FigureOf>
        )}
      </td>
    </>
  );
}

function Line({ line, ...props }: { readonly line: MassLine } & Omit<LedgerTableProps, "ledger">) {
  const { name, basis, of } = line;
  const whole = sumOf([line]);
  return (
    <tr>
      <th scope="row">
        {name} <Known line={line} />
      </th>
      <Cells
        board={props.board}
        mass={`mass of ${name}`}
        of={name}
        figure={whole}
        isKnown={basis !== "missing"}
      />
      <td class="mass-do">
        {typeof of === "number" ? (
          <>
            <button type="button" class="plain" onClick={() => props.onEdit(of)}>
              change<span class="visually-hidden"> {name}</span>
            </button>{" "}
            <button type="button" class="plain" onClick={() => props.onRemove(of)}>
              remove<span class="visually-hidden"> {name}</span>
            </button>
          </>
        ) : (
          <a href={partAddress(props.build, of)}>
            its record<span class="visually-hidden">: {name}</span>
          </a>
        )}
      </td>
    </tr>
  );
}

/** Every mass on board, group by group: the build's parts and its own lines. */
export function LedgerTable({ ledger, ...props }: LedgerTableProps) {
  const groups = MASS_GROUPS.map((group) => ({
    group,
    lines: ledger.lines.filter((line) => line.group === group),
  })).filter(({ lines }) => lines.length > 0);
  return (
    <table class="mass-ledger">
      <thead>
        <tr>
          <th scope="col">On board</th>
          <th scope="col" class="number">
            Mass
          </th>
          <th scope="col" class="number">
            ± (90 %)
          </th>
          <td />
        </tr>
      </thead>
      {groups.map(({ group, lines }) => (
        <tbody key={group}>
          <tr class="mass-group">
            <th scope="rowgroup">{groupTitle(group)}</th>
            <Cells
              board={props.board}
              mass={`sum of ${group}`}
              of={`sum of ${group}`}
              figure={sumOf(lines)}
            />
            <td />
          </tr>
          {lines.map((line) => (
            <Line key={String(line.of)} line={line} {...props} />
          ))}
        </tbody>
      ))}
      <tfoot>
        <tr>
          <th scope="row">Sum of the lines</th>
          <Cells board={props.board} mass="sum of the lines" of="sum of the lines" figure={ledger.sum} />
          <td />
        </tr>
      </tfoot>
    </table>
  );
}
