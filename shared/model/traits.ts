import { z } from "zod";
import { coreOf } from "./api/schemaAt.ts";
import { WITHDRAWAL_KEYS, type WithdrawalKey } from "./withdrawn.ts";

/** The objects that a record of a schema can be. */
function objectsOf(schema: z.core.$ZodType): z.ZodObject[] {
  const core = coreOf(schema);
  if (core instanceof z.ZodUnion) return core.options.flatMap(objectsOf);
  return core instanceof z.ZodObject ? [core] : [];
}

function valuesOf(schema: z.core.$ZodType | undefined): string[] {
  const core = schema && coreOf(schema);
  if (core instanceof z.ZodLiteral) return [...core.values].map(String);
  return core instanceof z.ZodEnum ? core.options.map(String) : [];
}

/** @returns the kinds that records of a schema come in, none where they have none */
export const kindsOf = (schema: z.core.$ZodType): string[] => [
  ...new Set(objectsOf(schema).flatMap(({ shape }) => valuesOf(shape.kind))),
];

/** @returns whether each record of a schema can have a field */
export const hasField = (schema: z.core.$ZodType, key: string): boolean =>
  objectsOf(schema).every(({ shape }) => shape[key] !== undefined);

/** @returns the field by which records of a schema are put out of use; null where they can't be */
export const withdrawalKeyOf = (schema: z.core.$ZodType): WithdrawalKey | null =>
  WITHDRAWAL_KEYS.find((key) => hasField(schema, key)) ?? null;

/** @returns whether each record of a schema has a day, by which a list stands in order */
export const isDated = (schema: z.core.$ZodType): boolean => hasField(schema, "date");
