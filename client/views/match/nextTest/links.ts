import type { NextTest } from "../../../../shared/book/nextTest/nextTests.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { pointText } from "../../../../shared/units/shown.ts";
import { href } from "../../../app/router.ts";

/** Where a test is put down, and what the link says. */
export interface Link {
  readonly address: string;
  readonly words: string;
}

/** The stored build that a test is for. */
export type OfBuild = Pick<Build, "rotor" | "diameter" | "motor" | "pack" | "skirt" | "surface" | "gear"> & {
  readonly id: string;
};

/** Parts of the build that the form of a new test begins with. */
const PARTS: Readonly<Record<TestKind, readonly Exclude<keyof OfBuild, "id">[]>> = {
  curve: ["rotor", "diameter", "motor"],
  thrust: ["rotor", "diameter", "motor"],
  motor: ["motor"],
  discharge: ["pack"],
  leak: ["skirt", "surface"],
  friction: ["surface"],
  "ride-height": ["gear"],
  "weigh-in": [],
  "run-log": [],
  pull: ["rotor", "diameter", "motor", "pack", "skirt", "surface"],
};

/** A part by its identifier, the rotor's size as it would be typed. */
const asked = (build: OfBuild, key: Exclude<keyof OfBuild, "id">): string | null =>
  key === "diameter" ? pointText(build.diameter, "length", 6) : build[key];

/** @returns the form of a new test, set up with the build's parts; the newest test to correct; for the scale, the build's own form */
export function linkOf({ key, kind, corrects }: NextTest, build: OfBuild): Link {
  const [newest] = corrects;
  if (newest !== undefined) return { address: href("bench", newest), words: "correct it" };
  if (key === "weigh")
    return { address: href("bench", "new/weigh-in", { build: build.id }), words: "log it" };
  if (key === "joint") return { address: href("parts", `surfaces/${build.surface}`), words: "state it" };
  if (kind === null) return { address: href("parts", `builds/${build.id}`), words: "state it" };
  const parts = PARTS[kind].map((key) => [key, asked(build, key)] as const);
  const there = parts.filter((each): each is [(typeof each)[0], string] => each[1] !== null);
  return { address: href("bench", `new/${kind}`, Object.fromEntries(there)), words: "log it" };
}
