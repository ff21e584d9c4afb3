import type { Energy } from "../../../../shared/decide/limits/energies.ts";
import type { CautionKey, Limit } from "../../../../shared/decide/limits/limit.ts";
import type { Limits } from "../../../../shared/decide/limits/limits.ts";
import { Caution } from "../../../ui/Caution.tsx";
import { Mark } from "../../../ui/Mark.tsx";
import {
  CAUTIONS,
  detailText,
  ENERGY_TITLES,
  energyText,
  GROUPS,
  limitText,
  nearText,
  TITLES,
  TONES,
  valueText,
} from "./limitWords.ts";

function LimitRow({ limit, limits }: { limit: Limit; limits: Limits }) {
  const detail = detailText(limit, limits);
  return (
    <tr>
      <th scope="row">
        {TITLES[limit.key]} {limit.estimated && <Mark word="estimated" />}
        {detail && <small>{detail}</small>}
      </th>
      <td class={TONES[limit.verdict]}>
        <span class="limit-value">{valueText(limit)}</span>
        <small>{limitText(limit)}</small>
        <small class={TONES[limit.verdict]}>{nearText(limit)}</small>
      </td>
    </tr>
  );
}

function EnergyRow({ energy }: { energy: Energy }) {
  return (
    <tr>
      <th scope="row">
        {ENERGY_TITLES[energy.key]}
        {energy.missing && (
          <small>Needs: {energy.missing.charAt(0).toLowerCase() + energy.missing.slice(1)}</small>
        )}
      </th>
      <td>
        <span class="limit-value">{energyText(energy)}</span>
      </td>
    </tr>
  );
}

export interface LimitTablesProps {
  readonly limits: Limits;
  /** false: they stand elsewhere on the page */
  readonly cautions?: boolean;
}

interface GroupProps extends LimitTablesProps {
  readonly caution: CautionKey;
  readonly title: string;
}

function Group({ caution, title, limits, cautions = true }: GroupProps) {
  const of = (each: { readonly caution: CautionKey }) => each.caution === caution;
  return (
    <div class="limit-group">
      <table class="holds limit-table">
        <caption>{title}</caption>
        <tbody>
          {limits.limits.filter(of).map((limit) => (
            <LimitRow key={limit.key} limit={limit} limits={limits} />
          ))}
          {limits.energies.filter(of).map((energy) => (
            <EnergyRow key={energy.key} energy={energy} />
          ))}
        </tbody>
      </table>
      {cautions && <Caution>{CAUTIONS[caution]}</Caution>}
    </div>
  );
}

/** Every limit with its figure, how near it is and what gives what isn't known; energies; each with its caution. */
export function LimitTables(props: LimitTablesProps) {
  return (
    <>
      {GROUPS.map((group) => (
        <Group key={group.caution} {...group} {...props} />
      ))}
    </>
  );
}
