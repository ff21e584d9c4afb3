import { RPM } from "../../../../shared/physics/motor.ts";
import { figureIn } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import { axisOver } from "../../../charts/model/axis.ts";
import type { Mark, Plot } from "../../../charts/model/plot.ts";
import { testName } from "../typed.ts";
import type { RotorFamily } from "./family.ts";
import { readingsInUse } from "./family.ts";
import { groupsOf, type ReadingGroup } from "./groups.ts";

const PERCENT = 100;
const rounded = (rpm: number) => figureIn(Number(rpm.toPrecision(3)) * RPM, "speed", 0);

/** @returns the speeds of a group: one number, or from slowest to fastest where it varied */
export function speedText({ rpm, range }: ReadingGroup): string {
  return range[1] > VARIED * range[0] ? `${rounded(range[0])}–${rounded(range[1])}` : rounded(rpm);
}

/** Speeds that differ by more than this ratio are told as a range. */
const VARIED = 1.06;

/** Residuals by test and speed, one strip each with its mean: a nominal speed shows as a strip off zero. */
export function groupPlot(family: RotorFamily): Plot {
  const groups = groupsOf(readingsInUse(family));
  const marks = groups.flatMap((group, strip) =>
    group.readings.flatMap((reading): Mark[] => {
      if (reading.residual === null) return [];
      const { key, test, outlier } = reading;
      const x = reading.residual * PERCENT;
      return [{ key, x, y: strip, shape: test, tone: "rotor", aside: false, outlier }];
    }),
  );
  const most = Math.max(0.5, ...marks.map((mark) => Math.abs(mark.x)));
  return {
    x: axisOver("residual, % of blocked pressure", [-most, most]),
    y: { label: "", from: groups.length - 0.5, to: -0.5 },
    levels: [{ key: "zero", along: "y", at: 0, tone: "quiet" }],
    lines: groups.flatMap((group, strip) =>
      group.mean === null
        ? []
        : [
            {
              key: group.key,
              tone: "ink" as const,
              style: "solid" as const,
              points: [
                { x: group.mean * PERCENT, y: strip - 0.32 },
                { x: group.mean * PERCENT, y: strip + 0.32 },
              ],
            },
          ],
    ),
    marks,
    strips: groups.map((group) => ({
      title: testName(family.tests[group.test]),
      detail: `${speedText(group)} ${unitOf("speed")}`,
    })),
  };
}
