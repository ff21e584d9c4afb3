import type { z } from "zod";
import { COLLECTIONS } from "../../shared/model/schemas.ts";
import { readJson } from "../json.ts";
import { parsed } from "../routes/route.ts";

/** Schemas of bodies that can be large, in an order that every thread knows. */
const LARGE: readonly z.ZodType[] = Object.values(COLLECTIONS);

/** A body to be read and checked in a thread. */
export interface LargeBody {
  readonly schema: number;
  readonly bytes: Uint8Array;
}

/** @returns how a schema is named to another thread; -1 where its bodies are never large */
export const placeOf = (schema: z.ZodType): number => LARGE.indexOf(schema);

/** @returns what a body holds @throws {Refusal} 400 where it is no JSON, or its schema refuses it */
export const checkedBody = ({ schema, bytes }: LargeBody): unknown => parsed(LARGE[schema], readJson(bytes));
