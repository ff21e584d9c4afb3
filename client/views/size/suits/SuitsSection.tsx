import { PlotChart } from "../../../charts/PlotChart.tsx";
import type { Used } from "./suits.ts";
import { suitsPlot, suitsTable } from "./suitsPlot.ts";
import { lineSentence, pointWords, suitsSentence } from "./suitsWords.ts";

const height = () => 320;

/** Does the family suit the duty at all? Where it is used beside where it is best, and where good fans lie. */
export function SuitsSection({ used, shown }: { used: readonly Used[]; shown: string }) {
  const own = used.find(({ id }) => id === shown);
  if (!own) return null;
  const describe = (key: string) => {
    const which = key.startsWith("best ") ? "best" : "used";
    const point = used.find(({ id }) => key === `${which} ${id}`);
    return point ? pointWords(point, which) : [];
  };
  return (
    <section aria-label="Does the family suit the duty?">
      <h2>Does the family suit the duty?</h2>
      <p>
        {suitsSentence(own)} {lineSentence(own)}
      </p>
      <details>
        <summary>Specific speed and diameter</summary>
        <PlotChart
          sentence={`Specific speed against specific diameter, with the published line of good fans. ${suitsSentence(own)}`}
          plot={suitsPlot(used, shown)}
          height={height}
          name="specific speed"
          table={() => suitsTable(used)}
          reading={{ label: "Families", describe }}
        />
        <p class="quiet small">
          A thin ring marks each family at its best efficiency, a strong one where it is used, its pressure
          counted as the cavity has it. Good fans: Cordier&rsquo;s line as Wright fits it, by total pressure,
          which is more; they scatter about it by a quarter.
        </p>
      </details>
    </section>
  );
}
