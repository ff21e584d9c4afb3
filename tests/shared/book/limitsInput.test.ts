import { describe, expect, it } from "vitest";
import { limitsInput } from "#shared/book/limitsInput.ts";
import { motorThermal } from "#shared/book/motorThermal.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { limitsOf } from "#shared/decide/limits/limits.ts";
import { motor } from "#shared/model/parts/motor.ts";
import { rotor } from "#shared/model/parts/rotor.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
type Material = NonNullable<(typeof book.rotors)[number]["data"]["material"]>;

function inputFor(id: string, material?: Partial<Material> | null, diameter?: number) {
  const stored = book.builds.find((each) => each.id === id)?.data;
  if (!stored) throw new Error(`no build ${id}`);
  const build = diameter === undefined ? stored : { ...stored, diameter };
  const { input, pack, motor: basis } = resolveBuild(book, build);
  if (!input || !pack || !basis) throw new Error("the demo is solvable");
  const run = {
    ...input,
    motor: { ...input.motor, thermalTimeConstant: basis.thermal.thermalTimeConstant },
    pack: { ...input.pack, cell: pack.cell },
    startCharge: 1,
  };
  const rotors = book.rotors.map((each) => {
    const own = material === null || !each.data.material ? undefined : { ...each.data.material, ...material };
    return { ...each, data: { ...each.data, material: own } };
  });
  return limitsInput({ ...book, rotors }, build, run);
}

describe("limits of the demo's builds", () => {
  it.each(["pane-crawler", "roof-crawler", "ridge-runner"])(
    "of %s are all known, none past burning or bursting",
    (id) => {
      const { limits, first, warmUp, energies } = limitsOf(inputFor(id));
      expect(limits.filter(({ verdict }) => verdict === "unknown")).toEqual([]);
      expect(energies.every(({ energy }) => energy !== null)).toBe(true);
      expect(warmUp?.timeToLimit).toBeNull();
      expect(first.sentence).toMatch(/^Nothing burns or bursts/);
    },
  );

  it("mark the winding by its guessed thermal figures, the rotor by its usual strength, nothing else", () => {
    expect(inputFor("pane-crawler").estimated).toEqual(["winding", "rotor-speed"]);
    expect(inputFor("pane-crawler", { strength: 20e6 }).estimated).toEqual(["winding"]);
  });
});

describe("the rotor as the book holds it", () => {
  it("takes the usual figures of its material where it gives none of its own", () => {
    expect(inputFor("pane-crawler").rotor).toMatchObject({ density: 1240, poisson: 0.36, strength: 25e6 });
    expect(inputFor("pane-crawler", { preset: "abs" }).rotor?.strength).toBe(15e6);
    expect(inputFor("pane-crawler", { density: 1111 }).rotor?.density).toBe(1111);
  });

  it("carries blades and mass to the build's diameter: masses with the cube, thicknesses in proportion", () => {
    const [of, at] = [inputFor("pane-crawler", undefined, 0.038), inputFor("pane-crawler", undefined, 0.076)];
    expect(at.rotor?.blades?.mass).toBeCloseToRelative(8 * (of.rotor?.blades?.mass ?? 0), 1e-12);
    expect(at.rotor?.blades?.rimThickness).toBeCloseToRelative(
      2 * (of.rotor?.blades?.rimThickness ?? 0),
      1e-12,
    );
    // Between the inlet, 0.52 of the diameter, and the rim.
    expect(of.rotor?.blades?.radius).toBeCloseToRelative((0.019 * 1.52) / 2, 1e-12);
    const nearest = book.rotors[0].data.sizes[1];
    expect(at.rotorMass).toBeCloseToRelative((nearest.mass ?? 0) * (0.076 / nearest.diameter) ** 3, 1e-12);
  });

  it("is unknown without a material, and its blades without their mass", () => {
    expect(inputFor("pane-crawler", null).rotor).toBeNull();
    expect(inputFor("pane-crawler", { bladeMass: undefined }).rotor?.blades).toBeNull();
  });
});

describe("a motor's thermal figures", () => {
  const made = (change: object) =>
    motor.parse({ name: "Can", kv: 5000, resistance: 0.2, noLoadCurrent: 0.3, ...change });

  it("are the stated ones, marked where they are guesses", () => {
    const stated = { thermalResistance: 9, thermalTimeConstant: 40 };
    expect(motorThermal(made(stated))).toEqual({ ...stated, basis: "stated" });
    expect(motorThermal(made({ ...stated, estimated: ["thermalTimeConstant"] })).basis).toBe("estimated");
  });

  it("are estimated from the can at 15 W/(m²K), with a size and no thermal resistance", () => {
    const { thermalResistance, basis } = motorThermal(made({ diameter: 0.02, length: 0.03 }));
    expect(thermalResistance).toBeCloseToRelative(
      1 / (15 * (Math.PI * 0.02 * 0.03 + (Math.PI / 2) * 0.02 ** 2)),
      1e-12,
    );
    expect(basis).toBe("estimated");
  });

  it("are unknown with neither, and leave a lone time constant out", () => {
    const unknown = { thermalResistance: null, thermalTimeConstant: null, basis: "unknown" };
    expect(motorThermal(made({ diameter: 0.02, thermalTimeConstant: 40 }))).toEqual(unknown);
  });
});

describe("a rotor's record", () => {
  const made = (material: object) =>
    rotor.safeParse({ name: "R", sizes: [{ diameter: 0.05 }, { diameter: 0.038 }], material });
  const problem = (material: object) =>
    made(material).error?.issues.map(({ path, message }) => [path.join("."), message]);

  it("reads what older books hold, and a usual material with nothing but its bore", () => {
    const old = { density: 1240, poissonRatio: 0.36, strength: 25e6, boreDiameter: 0.0015 };
    expect(made(old).data?.material).toEqual(old);
    expect(made({ preset: "petg", boreDiameter: 0 }).success).toBe(true);
  });

  it("refuses by its field a bore as wide as the smallest size", () => {
    const wide = problem({ preset: "pla", boreDiameter: 0.038 });
    expect(wide).toEqual([
      ["material.boreDiameter", expect.stringMatching(/less than the rotor's diameter, 0.038 m/)],
    ]);
  });

  it("refuses a material without figures and without a usual one, and blades without a rim", () => {
    expect(problem({ density: 1240, poissonRatio: 0.3, boreDiameter: 0 })?.[0][0]).toBe("material.strength");
    expect(problem({ preset: "wood", boreDiameter: 0 })?.[0][0]).toBe("material.preset");
    const blades = problem({ preset: "pla", boreDiameter: 0, bladeMass: 1e-3 });
    expect(blades?.[0][0]).toBe("material.rimThickness");
  });
});
