import { describe, expect, it } from "vitest";
import { estimateSentence } from "#client/ui/estimateWords.ts";

const plain = (text: string) => text.replace(/\u202f/g, " ");

describe("estimateSentence", () => {
  it("tells pressure and power at best efficiency and pressure with no flow, and that all are within the mark", () => {
    const off = {
      bestPhi: 0.1,
      pressure: { tested: 0.616, estimated: 0.7 },
      power: { tested: 0.11, estimated: 0.1 },
      blocked: { tested: 0.8, estimated: 0.8 },
      marked: 0.3,
    };
    expect(plain(estimateSentence("Swept nine", off))).toBe(
      "Against the estimate from its geometry, the tested Swept nine has at best efficiency 12 % less pressure (ψ 0.616 against 0.700), 10 % more power (λ 0.110 against 0.100), with no flow as much pressure (ψ 0.800 against 0.800): all within the ± 30 % that an estimate is marked with.",
    );
  });

  it("without a measured power tells the pressure with no flow alone, and that it is not within the mark", () => {
    const off = {
      bestPhi: null,
      pressure: null,
      power: null,
      blocked: { tested: 1.4, estimated: 1 },
      marked: 0.3,
    };
    expect(plain(estimateSentence("Tube", off))).toMatch(
      /the tested Tube has with no flow 40 % more.*not all within/,
    );
  });

  it("an estimate that has no pressure there is not divided by", () => {
    const off = {
      bestPhi: 0.4,
      pressure: { tested: 0.2, estimated: -0.1 },
      power: null,
      blocked: { tested: 1, estimated: 1 },
      marked: 0.3,
    };
    expect(estimateSentence("Tube", off)).toMatch(/more pressure than the estimate, which had none there/);
  });
});
