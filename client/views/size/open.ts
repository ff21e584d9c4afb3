import type { NearMotor } from "../../../shared/book/size/nearMotors.ts";
import type { Build } from "../../../shared/model/build.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { navigate } from "../../app/router.ts";
import { ApiError, api } from "../../state/api.ts";
import { keep } from "../../state/book.ts";
import { sizeText } from "./sizeWords.ts";

const MOST_LETTERS = 120;

function nameOf(base: Build, diameter: number): string {
  const ending = `, sized ${sizeText(diameter)}`;
  return `${base.name.slice(0, MOST_LETTERS - ending.length)}${ending}`;
}

async function refusalOf(work: () => Promise<void>): Promise<string | null> {
  try {
    await work();
    return null;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return error.fields[0]?.message ?? error.message;
  }
}

/** Stores a size with a motor of the book as a build, and shows it in Match. @returns null, or why the server refused it */
export function makeBuild(base: Build, { build }: NearMotor): Promise<string | null> {
  return refusalOf(async () => {
    const { retired: _own, ...data } = { ...build, name: nameOf(base, build.diameter) };
    const record = await api.post<StoredOf<"builds">>("/builds", data);
    keep("builds", record);
    navigate("match", record.id);
  });
}

/** What a search round a size is asked. */
export interface Around {
  readonly build: StoredOf<"builds">;
  readonly rotor: string;
  /** [m] */
  readonly diameter: number;
  /** those that are weighed */
  readonly motors: readonly string[];
  readonly attitude: number | "worst";
  readonly margin: number;
}

/** Sizes to either side of the one that was found, and their step [m]. */
const [BESIDE, STEP] = [0.006, 0.001];
const tenth = (length: number) => Number(length.toFixed(4));

/** Begins a search with the sizes next to this one and every weighed motor, and shows it in Choose. @returns null, or why the server refused it */
export function tryInChoose({
  build,
  rotor,
  diameter,
  motors,
  attitude,
  margin,
}: Around): Promise<string | null> {
  const { pack, skirt } = build.data;
  const diameters = { from: tenth(diameter - BESIDE), to: tenth(diameter + BESIDE), step: STEP };
  return refusalOf(async () => {
    const begun = await api.post<{ readonly id: string }>("/choose", {
      build: build.id,
      motors,
      packs: [pack],
      rotors: [{ rotor, diameters }],
      skirts: skirt === null ? [] : [{ skirt }],
      wants: { attitudes: [{ angle: attitude, mode: "driving" }], targetMargin: margin },
    });
    navigate("choose", begun.id);
  });
}
