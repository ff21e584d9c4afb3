import type { Book } from "../../../shared/book/resolve.ts";
import type { NearMotor } from "../../../shared/book/size/nearMotors.ts";
import { isTyped } from "../../../shared/book/size/need/bookOfNeed.ts";
import type { Build } from "../../../shared/model/build.ts";
import type { Stored, StoredOf } from "../../../shared/model/record.ts";
import { navigate } from "../../app/router.ts";
import { ApiError, api } from "../../state/api.ts";
import { addRecord, removeRecord } from "../../state/write.ts";
import { sizeText } from "./sizeWords.ts";
import type { Subject } from "./subject.ts";

const MOST_LETTERS = 120;

function nameOf(base: string, diameter: number): string {
  const ending = `, sized ${sizeText(diameter)}`;
  return `${base.slice(0, MOST_LETTERS - ending.length)}${ending}`;
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

/** Places of a build that may name something that is only typed, and where it belongs. */
const TYPED_PARTS = [
  ["rotor", "rotors"],
  ["surface", "surfaces"],
  ["skirt", "skirts"],
  ["pack", "packs"],
] as const;

/** Stores a build, and before it whatever of it is only typed. Refused, nothing of it stays. @throws {ApiError} */
async function storeBuild(book: Book, data: Build): Promise<StoredOf<"builds">> {
  const written: (readonly [(typeof TYPED_PARTS)[number][1], Stored<unknown>])[] = [];
  try {
    const parts: Partial<Record<(typeof TYPED_PARTS)[number][0], string>> = {};
    for (const [key, collection] of TYPED_PARTS) {
      const id = data[key];
      if (id === null || !isTyped(id)) continue;
      const typed = book[collection].find((record) => record.id === id);
      if (!typed) continue;
      const stored = await addRecord(collection, typed.data);
      written.push([collection, stored]);
      parts[key] = stored.id;
    }
    return (await addRecord("builds", { ...data, ...parts })) as StoredOf<"builds">;
  } catch (error) {
    for (const [collection, record] of written.reverse()) await removeRecord(collection, record);
    throw error;
  }
}

const sized = (name: string, { build }: NearMotor): Build => {
  const { retired: _own, ...data } = { ...build, name: nameOf(name, build.diameter) };
  return data;
};

/** Stores a size with a motor of the book as a build, and shows it in Match. @returns null, or why the server refused it */
export function makeBuild(book: Book, name: string, motor: NearMotor): Promise<string | null> {
  return refusalOf(async () => {
    const record = await storeBuild(book, sized(name, motor));
    navigate("match", record.id);
  });
}

/** What a search round a size is asked. */
export interface Around {
  /** with which a need is stored before it can be searched for */
  readonly near: NearMotor;
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
export function tryInChoose({ book, build, need }: Subject, around: Around): Promise<string | null> {
  const { near, rotor, diameter, motors, attitude, margin } = around;
  const diameters = { from: tenth(diameter - BESIDE), to: tenth(diameter + BESIDE), step: STEP };
  return refusalOf(async () => {
    const isStored = !need && !isTyped(rotor);
    const asked = isStored ? build : await storeBuild(book, sized(build.data.name, near));
    const { pack, skirt } = asked.data;
    const begun = await api.post<{ readonly id: string }>("/choose", {
      build: asked.id,
      motors,
      packs: [pack],
      rotors: [{ rotor: isStored ? rotor : asked.data.rotor, diameters }],
      skirts: skirt === null ? [] : [{ skirt }],
      wants: { attitudes: [{ angle: attitude, mode: "driving" }], targetMargin: margin },
    });
    navigate("choose", begun.id);
  });
}
