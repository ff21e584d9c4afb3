import { heightUnder, type RideHeightFit } from "../../../../shared/fit/rideHeightFit.ts";
import { studentQuantile } from "../../../../shared/numeric/student.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { axisOver } from "../../../charts/model/axis.ts";
import type { Band, Line, Plot } from "../../../charts/model/plot.ts";
import { testName } from "../typed.ts";
import type { GearPage } from "./gearData.ts";

const STEPS = 24;
const TWO_SIDED = 0.975;
/** Normal quantile of the same share: the gauge's own uncertainty has no degrees of freedom to count. */
const NORMAL = 1.96;

const grams = (load: number) => inUnit(load, "load");
const millimetres = (height: number) => inUnit(height, "length");

function along(from: number, to: number): number[] {
  return Array.from({ length: STEPS + 1 }, (_, i) => from + ((to - from) * i) / STEPS);
}

function bandOf(fit: RideHeightFit, loads: readonly number[]): Band {
  const wide = fit.dof === null ? NORMAL : studentQuantile(TWO_SIDED, fit.dof);
  const points = loads.map((load) => {
    const { height, error } = heightUnder(fit, load);
    return { x: grams(load), lo: millimetres(height - wide * error), hi: millimetres(height + wide * error) };
  });
  return { key: "band", tone: "leak", strength: "mean", points };
}

function linesOf(page: GearPage, fit: RideHeightFit, loads: readonly number[]): Line[] {
  return fit.heights.map((start, test) => ({
    key: `line ${test}`,
    tone: "leak",
    style: "solid",
    points: loads.map((load) => ({ x: grams(load), y: millimetres(start - load / fit.stiffness) })),
    label: page.tests.length > 1 ? undefined : "fitted line",
  }));
}

/** The lip's height against the load: readings, a line for each test, the first one's 95 % band. */
export function gearPlot(page: GearPage): Plot {
  const { points, tested, tests } = page;
  const loads = points.map(({ load }) => load);
  const whole = along(Math.min(0, ...loads), Math.max(0, ...loads));
  const { fit } = tested;
  const band = fit ? [bandOf(fit, whole)] : [];
  const heights = [
    ...points.map(({ height }) => millimetres(height)),
    ...band.flatMap((each) => each.points.flatMap(({ lo, hi }) => [lo, hi])),
  ];
  return {
    x: axisOver(headed("load on the vehicle beside its own weight", "load"), loads.map(grams), [0]),
    y: { ...axisOver(headed("height of the lip", "length"), heights, [0]), from: 0 },
    bands: band,
    lines: fit ? linesOf(page, fit, whole) : [],
    marks: points.map(({ key, test, aside, load, height }) => ({
      key,
      x: grams(load),
      y: millimetres(height),
      shape: test,
      tone: "leak",
      aside: aside !== null,
      outlier: false,
    })),
    shapes: tests.map((test, shape) => ({ key: test.id, shape, text: testName(test) })),
  };
}
