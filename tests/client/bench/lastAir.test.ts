import { describe, expect, it } from "vitest";
import { lastAir } from "#client/views/bench/forms/lastAir.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { PULL } from "./examples.ts";

const AIR = {
  temperature: { value: 21, unit: "°C" },
  pressure: { value: 954.4, unit: "hPa" },
  humidity: { value: 40, unit: "%" },
};
const [like] = demoBook().tests;
const test = (date: string, air?: typeof AIR) => ({ ...like, data: { ...PULL, date, air } as BenchTest });

describe("lastAir", () => {
  it("is that of the newest test with one, whatever order the book has them in, as it was typed", () => {
    const older = { ...AIR, temperature: { value: 5, unit: "°C" } };
    const tests = [test("2026-03-02", AIR), test("2026-03-01", older), test("2026-03-03")];
    expect(lastAir({ tests })).toEqual({
      date: "2026-03-02",
      texts: { "air.temperature": "21 °C", "air.pressure": "954.4 hPa", "air.humidity": "40 %" },
    });
  });

  it("is none where no air was ever read", () => {
    expect(lastAir({ tests: [test("2026-03-03")] })).toBeNull();
  });
});
