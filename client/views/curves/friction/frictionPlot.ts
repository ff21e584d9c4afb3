import { axisOver } from "../../../charts/model/axis.ts";
import type { Bracket, Mark, Plot } from "../../../charts/model/plot.ts";
import type { FrictionGroup, Slide } from "./frictionData.ts";

const DEGREES = 180 / Math.PI;
const RIGHT_ANGLE = 90;

const inDegrees = (radians: number) => radians * DEGREES;
const tilt = (mu: number) => inDegrees(Math.atan(Math.max(0, mu)));

function bracketOf(slide: Slide, strip: number): Bracket[] {
  const { key, held, slid, aside } = slide;
  if (held === null) return [];
  return [
    {
      key,
      along: "x",
      at: strip,
      lo: inDegrees(held),
      hi: slid === null ? null : inDegrees(slid),
      tone: "rotor",
      aside: aside !== null,
    },
  ];
}

/** A board raised steadily until it slid gives a reading, no bracket. */
function markOf(slide: Slide, strip: number): Mark[] {
  const { key, held, slid, aside } = slide;
  if (held !== null || slid === null) return [];
  const x = inDegrees(slid);
  return [{ key, x, y: strip, shape: 0, tone: "rotor", aside: aside !== null, outlier: false }];
}

/** Slides of one contact, a strip each, with the tilt of μ and its interval. */
export function frictionPlot(group: FrictionGroup): Plot {
  const { slides, fit } = group;
  const brackets = slides.flatMap(bracketOf);
  const marks = slides.flatMap(markOf);
  const y = { label: "", from: slides.length - 0.5, to: -0.5 };
  const ends = [...brackets.flatMap(({ lo, hi }) => [lo, hi ?? lo]), ...marks.map((mark) => mark.x)];
  const interval = fit?.interval;
  const around = interval ? interval.map((mu) => tilt(mu)) : [];
  const axis = axisOver("tilt, °", [...ends, ...around]);
  return {
    x: { ...axis, from: Math.max(0, axis.from), to: Math.min(RIGHT_ANGLE, axis.to) },
    y,
    bands:
      around.length === 2
        ? [
            {
              key: "interval",
              tone: "rotor",
              strength: "mean",
              points: around.map((x) => ({ x, lo: y.from, hi: y.to })),
            },
          ]
        : [],
    levels: fit ? [{ key: "mu", along: "y", at: tilt(fit.mu), tone: "rotor" }] : [],
    brackets,
    marks,
    strips: slides.map((slide, i) => ({
      title: "",
      detail: `slide ${i + 1}${slide.aside === null ? "" : ", aside"}`,
    })),
  };
}
