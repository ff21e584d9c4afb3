import { describe, expect, it } from "vitest";
import { warmUpWords, windingPlot } from "#client/views/rundown/limits/windingPlot.ts";

/** From 20 °C by 30 K a minute; the limit of 80 °C is met after two. */
const warmUp = {
  timeToLimit: 120,
  samples: [0, 60, 180, 240].map((time) => ({ time, temperature: 293.15 + time / 2 })),
};
const picture = { warmUp, limit: 353.15, estimated: false };

describe("the winding from cold", () => {
  it("is solid to its limit, dashed from there on, both through the point where they meet", () => {
    const [solid, dashed] = windingPlot(picture).lines ?? [];
    expect(solid.points.at(-1)).toEqual({ x: 2, y: 80 });
    expect(dashed.points[0]).toEqual({ x: 2, y: 80 });
    expect([solid.style, dashed.style]).toEqual(["solid", "dashed"]);
    expect(windingPlot(picture).rings).toMatchObject([{ x: 2, y: 80 }]);
  });

  it("is one line without a ring, where it never meets its limit or none is known", () => {
    const never = windingPlot({ ...picture, warmUp: { ...warmUp, timeToLimit: null } });
    expect(never.lines).toHaveLength(1);
    expect(never.rings).toEqual([]);
    expect(never.levels).toHaveLength(1);
    expect(windingPlot({ ...picture, limit: null }).levels).toEqual([]);
  });

  it("is shown in seconds up to three minutes, in minutes from there on", () => {
    const short = { timeToLimit: null, samples: warmUp.samples.slice(0, 2) };
    expect(windingPlot({ ...picture, warmUp: short }).x).toMatchObject({
      label: "time from cold, s",
      to: 60,
    });
    expect(windingPlot(picture).x).toMatchObject({ label: "time from cold, min", to: 4 });
  });

  it("says its temperature and time at every moment, and where it is at its limit", () => {
    expect(warmUpWords(picture, "1")).toEqual(["50\u202f°C after 1.0\u202fmin"]);
    expect(warmUpWords(picture, "met")).toEqual(["80\u202f°C after 2.0\u202fmin", "at its limit"]);
    expect(warmUpWords(picture, "9")).toEqual([]);
  });
});
