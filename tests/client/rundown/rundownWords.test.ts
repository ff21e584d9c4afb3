import { describe, expect, it } from "vitest";
import {
  alarmFor,
  alarmText,
  asIfText,
  cellVoltageAt,
  endSentence,
  fallWords,
  rundownSentence,
} from "#client/views/rundown/rundownWords.ts";
import { answered, falls, never, toTheEnd, track } from "./examples.ts";

const plain = (text: string) => text.replaceAll("\u202f", " ");

describe("rundownSentence", () => {
  it("names what is lost first, with two losses, and when and at what pack voltage", () => {
    const run = answered([
      track("the wall", falls(400, 6.5)),
      track("the worst overhang", falls(204, 7.04)),
      track("the ceiling", toTheEnd),
    ]);
    expect(plain(rundownSentence(run))).toBe(
      "It stops holding the worst overhang after 3.4 minutes, at 7.0 V.",
    );
  });

  it("adds what was never held, with one lost on the way", () => {
    const run = answered([track("the wall", falls(45, 7.8)), track("the worst overhang", never)]);
    expect(plain(rundownSentence(run))).toBe(
      "It stops holding the wall after 45 seconds, at 7.8 V. The worst overhang is never held while it drives.",
    );
  });

  it("is enough everywhere, with no loss, until the charge ends", () => {
    expect(rundownSentence(answered([track("the wall", toTheEnd)]))).toBe(
      "The pull is enough everywhere it must go until the charge ends after 10.0 minutes.",
    );
  });

  it("keeps the held and the never held apart, with no loss on the way", () => {
    const run = answered([track("the ceiling", toTheEnd), track("the wall", never)]);
    expect(rundownSentence(run)).toBe(
      "The pull is enough for the ceiling until the charge ends after 10.0 minutes. The wall is never held while it drives.",
    );
  });

  it("says that nothing is held, with every attitude lost from the start", () => {
    expect(rundownSentence(answered([track("the wall", never)]))).toMatch(
      /^The pull is too small for all it must hold/,
    );
  });

  it("says that there is no run, with the end at the start", () => {
    const run = answered([track("the wall", toTheEnd)], { end: { time: 0, reason: "minimum-voltage" } });
    expect(rundownSentence(run)).toMatch(/^There is no run/);
  });
});

describe("asIfText", () => {
  it.each(["bursts", "burns"] as const)(
    "of a build that %s: says so, and that the run is not to be relied on",
    (state) => {
      expect(asIfText(state)).toMatch(new RegExp(`^The (rotor|motor) ${state}.* no run to rely on\\.`));
    },
  );
});

describe("the alarm", () => {
  it("stands at the loaded cell's voltage, with a loss between two samples, by their straight line and rounded up", () => {
    const run = answered([track("the wall", falls(202, 7.3))]);
    expect(cellVoltageAt(run.samples, 202)).toBeCloseToRelative(4 - (0.4 * 202) / 300, 1e-12);
    expect(alarmFor(run, "holds")?.cell).toBe(3.74);
  });

  it("is not rounded past a whole step, with the cell exactly on it", () => {
    expect(alarmFor(answered([track("the wall", falls(300, 7.1))]), "holds")?.cell).toBe(3.6);
  });

  it("is set by the end of the charge, with nothing lost, and never lies below the cell's minimum", () => {
    const run = answered([track("the wall", toTheEnd)]);
    expect(alarmFor(run, "holds")).toEqual({ cell: 3, lost: null });
    expect(alarmFor({ ...run, minimumVoltage: 3.2 }, "holds")).toEqual({ cell: 3.2, lost: null });
  });

  it("names both levels, with the target lost before 1 is", () => {
    const run = answered([track("the wall", falls(450, 6.5), falls(300, 7.1))]);
    expect(plain(alarmText(run))).toBe(
      "Low-voltage alarm: at least 3.30 V a cell under load, where the wall is lost; set to 3.60 V a cell it warns before the wall falls below the 1.50 × wanted.",
    );
  });

  it("is none, with nothing held from the start, and says so", () => {
    const run = answered([track("the wall", never)]);
    expect(alarmFor(run, "holds")).toBeNull();
    expect(alarmText(run)).toBe("No alarm helps: nothing is held from the start.");
  });
});

describe("ends and cells of the table", () => {
  it("says why the charge ends, with the cell at its minimum and with it empty", () => {
    const run = answered([]);
    expect(plain(endSentence(run))).toBe(
      "From a full charge it runs 10.0 minutes, until the loaded cell reaches its minimum of 3.00 V.",
    );
    expect(endSentence({ ...run, end: { time: 600, reason: "empty" } })).toMatch(
      /until the cell is empty\.$/,
    );
    const [first, ...later] = run.samples;
    const part = { ...run, samples: [{ ...first, charge: 0.8 }, ...later] };
    expect(plain(endSentence(part))).toMatch(/^From 80 % charge it runs 10\.0 minutes/);
  });

  it("gives minutes, pack and cell volts, with a loss, and words without one", () => {
    const { samples } = answered([]);
    const { head, rest } = fallWords(falls(300, 7.1), samples);
    expect([plain(head), plain(rest)]).toEqual(["5.0 min", "7.10 V, 3.60 V a cell"]);
    expect(fallWords(toTheEnd, samples).head).toBe("to the end");
    expect(fallWords(never, samples).head).toBe("never held");
  });
});
