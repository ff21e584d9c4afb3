import { describe, expect, it } from "vitest";
import { notesOn, speedText, speedWords, uncertaintyText } from "#client/views/bench/ear/earWords.ts";
import { spectrumPlot, spectrumTable } from "#client/views/bench/ear/spectrumPlot.ts";
import { spectrumOf } from "#shared/fit/sound/spectrum.ts";
import { rotorSound } from "#tests/support/rotorSound.ts";

const RPM = (2 * Math.PI) / 60;
const heard = { speed: 24012.34 * RPM, uncertainty: 7.21 * RPM };

describe("what was heard, in words", () => {
  it("has the digits that the uncertainty allows", () => {
    expect(speedText(heard)).toBe("24012.3 rpm");
    expect(uncertaintyText(heard)).toBe("7.2 rpm");
    // 1.645 × 7.21 = 11.86
    expect(speedWords(heard)).toBe("24\u202f012.3 ± 11.9\u202frpm (90 %)");
  });

  it("says what else was heard, and what the speed is based on", () => {
    const found = {
      frequency: 3600,
      uncertainty: 1,
      score: 20,
      other: 2100,
      shaft: { says: "other", blades: 7 },
    } as const;
    expect(notesOn(found, 9)).toEqual([
      "Another sound is as clear, as of 14\u202f000\u202frpm: narrow the range, or let one rotor run alone.",
      "The shaft's own rate speaks for 7 blades: count them, the speed is based on it.",
    ]);
    expect(notesOn({ ...found, other: null, shaft: { says: "nothing" } }, 9)).toEqual([
      "The shaft's own rate isn't heard: the speed is based on the count of 9 blades.",
    ]);
  });
});

describe("the spectrum's picture", () => {
  const samples = rotorSound({
    rate: 48_000,
    seconds: 0.7,
    blades: 9,
    turns: () => 400,
    harmonics: [1, 0.5],
  });
  const drawn = { spectrum: spectrumOf(samples, 48_000), found: 3600, to: 9000 };

  it("keeps each harmonic's peak though thousands of lines become a few hundred points", () => {
    const { lines = [], levels = [] } = spectrumPlot(drawn);
    const { points } = lines[0];
    expect(points.length).toBeLessThanOrEqual(360);
    const loudest = points.reduce((best, each) => (each.y > best.y ? each : best));
    expect(Math.abs(loudest.x - 3600)).toBeLessThan(3);
    // a sine of a third of full scale: mean square of its Hann line, (1/3)²/4 · 2/3
    expect(loudest.y).toBeCloseTo(10 * Math.log10((1 / 9 / 4) * (2 / 3)), 0);
    expect(levels.map(({ at }) => at)).toEqual([3600, 7200]);
  });

  it("has the same points in its table", () => {
    expect(spectrumTable(drawn).rows).toHaveLength(spectrumPlot(drawn).lines?.[0].points.length ?? 0);
  });
});
