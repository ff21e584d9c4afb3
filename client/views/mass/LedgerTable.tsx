import { type Ledger, type MassLine, type PartLine, sumOf } from "../../../shared/book/mass/ledger.ts";
import type { Build } from "../../../shared/model/build.ts";
import { MASS_GROUPS } from "../../../shared/model/ledger.ts";
import { formatFixed } from "../../../shared/units/format.ts";
import { href } from "../../app/router.ts";
import { BASIS_WORDS, gramsText, groupTitle, halfBand } from "./massWords.ts";

export interface LedgerTableProps {
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
      {quantity !== 1 && `${pieces} × ${gramsText(mass)}, `}
      {basis === "weighed" ? BASIS_WORDS[basis] : <span class="mark">{BASIS_WORDS[basis]}</span>}
    </small>
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
      <td class="number">{basis === "missing" ? "–" : gramsText(whole.value)}</td>
      <td class="number quiet">{halfBand(whole)}</td>
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
            <td class="number">{gramsText(sumOf(lines).value)}</td>
            <td class="number quiet">{halfBand(sumOf(lines))}</td>
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
          <td class="number">{gramsText(ledger.sum.value)}</td>
          <td class="number quiet">{halfBand(ledger.sum)}</td>
          <td />
        </tr>
      </tfoot>
    </table>
  );
}
