import type { Energy } from "../../../../shared/decide/limits/energies.ts";
import type { CautionKey, Limit } from "../../../../shared/decide/limits/limit.ts";
import type { Limits } from "../../../../shared/decide/limits/limits.ts";
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

function Group({ caution, title, limits }: { caution: CautionKey; title: string; limits: Limits }) {
  const of = (each: { readonly caution: CautionKey }) => each.caution === caution;
  return (
    <tbody>
      <tr class="limit-group">
        <th scope="rowgroup" colSpan={2}>
          {title}
        </th>
      </tr>
      {limits.limits.filter(of).map((limit) => (
        <LimitRow key={limit.key} limit={limit} limits={limits} />
      ))}
      {limits.energies.filter(of).map((energy) => (
        <EnergyRow key={energy.key} energy={energy} />
      ))}
      <tr>
        <td colSpan={2} class="limit-caution">
          <p class="caution" role="note">
            {CAUTIONS[caution]}
          </p>
        </td>
      </tr>
    </tbody>
  );
}

/** Every limit with its figure, how near it is and what gives what isn't known; energies; each with its caution. */
export function LimitTable({ limits }: { limits: Limits }) {
  return (
    <table class="holds limit-table">
      <caption class="quiet small">
        At {(100 * limits.charge).toFixed(0)} % charge; all but the winding just switched on, cold, when most
        flows. Near: from 80 % of the way to the limit on.
      </caption>
      {GROUPS.map((group) => (
        <Group key={group.caution} {...group} limits={limits} />
      ))}
    </table>
  );
}
