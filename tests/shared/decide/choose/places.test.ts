import { describe, expect, it } from "vitest";
import { indexOf, placesOf, radixOf, setsIn } from "#shared/decide/choose/places.ts";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { caught } from "./caught.ts";
import { question } from "./questions.ts";

const radix = radixOf(question());

describe("the mixed radix of a question", () => {
  it("counts every set once: places and index are each other's inverse", () => {
    const seen = new Set<string>();
    for (let index = 0; index < setsIn(radix); index++) {
      const places = placesOf(radix, index);
      expect(indexOf(radix, places)).toBe(index);
      seen.add(JSON.stringify(places));
    }
    expect(seen.size).toBe(setsIn(radix));
  });

  it("runs fastest through the gaps, then skirts, throttles, packs, sizes, rotors, motors", () => {
    const first = { motor: 0, rotor: 0, size: 0, pack: 0, duty: 0, skirt: 0, gap: 0 };
    expect(placesOf(radix, 1)).toEqual({ ...first, gap: 1 });
    expect(placesOf(radix, 3)).toEqual({ ...first, skirt: 1 });
    expect(placesOf(radix, 5)).toEqual({ ...first, duty: 1 });
    expect(placesOf(radix, 10)).toEqual({ ...first, pack: 1 });
    expect(placesOf(radix, 20)).toEqual({ ...first, size: 1 });
    expect(placesOf(radix, 60)).toEqual({ ...first, rotor: 1 });
    expect(placesOf(radix, 120)).toEqual({ ...first, motor: 1 });
  });

  it.each([-1, 360, 1.5, Number.NaN])("has no set %s", (index) => {
    expect(caught(() => placesOf(radix, index), OutOfRangeError).quantity).toBe("index");
  });

  it("has no index for a part that is not admitted", () => {
    const places = { ...placesOf(radix, 0), gap: 7 };
    expect(caught(() => indexOf(radix, places), OutOfRangeError).quantity).toBe("skirt and gap");
  });
});
