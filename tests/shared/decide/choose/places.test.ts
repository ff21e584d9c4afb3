import { describe, expect, it } from "vitest";
import { combinationsIn, placesOf, radixOf } from "#shared/decide/choose/places.ts";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { caught } from "./caught.ts";
import { propeller, question, stand } from "./questions.ts";

const radix = radixOf(question());

describe("the mixed radix of a question", () => {
  it("counts every combination once: each index has places of its own", () => {
    const seen = new Set<string>();
    for (let index = 0; index < combinationsIn(radix); index++) {
      seen.add(JSON.stringify(placesOf(radix, index)));
    }
    expect(seen.size).toBe(combinationsIn(radix));
  });

  it("runs fastest through the gaps, then skirts, throttles, packs, sizes, rotors, motors", () => {
    const first = { open: false, motor: 0, rotor: 0, size: 0, pack: 0, duty: 0, skirt: 0, gap: 0 };
    expect(placesOf(radix, 1)).toEqual({ ...first, gap: 1 });
    expect(placesOf(radix, 3)).toEqual({ ...first, skirt: 1 });
    expect(placesOf(radix, 5)).toEqual({ ...first, duty: 1 });
    expect(placesOf(radix, 10)).toEqual({ ...first, pack: 1 });
    expect(placesOf(radix, 20)).toEqual({ ...first, size: 1 });
    expect(placesOf(radix, 60)).toEqual({ ...first, rotor: 1 });
    expect(placesOf(radix, 120)).toEqual({ ...first, motor: 1 });
  });

  it("counts the combinations of propellers behind those of rotors in a duct, with every stand and no gap", () => {
    const both = question({ propellers: [propeller("grey")], stands: [stand(null), stand("lip")] });
    const wider = radixOf(both);
    expect(combinationsIn(wider)).toBe(360 + 3 * 2 * 2 * 2 * 2);
    expect(placesOf(wider, 359)).toEqual(placesOf(radix, 359));
    const first = { open: true, motor: 0, rotor: 0, size: 0, pack: 0, duty: 0, skirt: 0, gap: 0 };
    expect(placesOf(wider, 360)).toEqual(first);
    expect(placesOf(wider, 361)).toEqual({ ...first, skirt: 1 });
    expect(placesOf(wider, 362)).toEqual({ ...first, duty: 1 });
    expect(placesOf(wider, 368)).toEqual({ ...first, size: 1 });
    expect(placesOf(wider, 407)).toEqual({ ...first, motor: 2, size: 1, pack: 1, duty: 1, skirt: 1 });
    expect(caught(() => placesOf(wider, 408), OutOfRangeError).quantity).toBe("index");
  });

  it.each([-1, 360, 1.5, Number.NaN])("has no combination %s", (index) => {
    expect(caught(() => placesOf(radix, index), OutOfRangeError).quantity).toBe("index");
  });
});
