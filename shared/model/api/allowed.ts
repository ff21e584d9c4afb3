import { z } from "zod";
import { coreOf, layersOf } from "./schemaAt.ts";

/** A bound wider than this only keeps out nonsense; naming it would not help anyone. */
const WORTH_NAMING = 1e9;

const quoted = (values: Iterable<unknown>): string =>
  [...values].map((value) => JSON.stringify(value)).join(", ");

function numberRange(schema: z.ZodNumber): string {
  const { minValue, maxValue } = schema;
  const low = minValue !== null && minValue > -WORTH_NAMING ? `at least ${minValue}` : "";
  const high = maxValue !== null && maxValue < WORTH_NAMING ? `at most ${maxValue}` : "";
  return [low, high].filter(Boolean).join(", ");
}

function numberAllowed(schema: z.ZodNumber, described: string): string {
  const whole = schema.isInt ? "a whole number" : "a number";
  if (described === "") return [whole, numberRange(schema)].filter(Boolean).join(", ");
  const { maxValue } = schema;
  const named = /\d to \d/.test(described) || maxValue === null || maxValue >= WORTH_NAMING;
  return named ? described : `${described}, at most ${maxValue}`;
}

function kindAllowed(schema: z.core.$ZodType, described: string): string {
  if (schema instanceof z.ZodNumber) return numberAllowed(schema, described);
  if (schema instanceof z.ZodEnum) return `one of ${quoted(schema.options)}`;
  if (schema instanceof z.ZodLiteral) return quoted(schema.values);
  if (schema instanceof z.ZodBoolean) return "true or false";
  if (schema instanceof z.ZodObject) return objectAllowed(schema, described);
  if (schema instanceof z.ZodArray) return described || "a list";
  if (schema instanceof z.ZodUnion) return unionAllowed(schema, described);
  return described || (schema instanceof z.ZodString ? "text" : schema._zod.def.type);
}

function objectAllowed(schema: z.ZodObject, described: string): string {
  const keys = `an object with ${Object.keys(schema.shape).join(", ")}`;
  return described === "" ? keys : `${described}; ${keys}`;
}

function unionAllowed(schema: z.ZodUnion, described: string): string {
  if (!(schema instanceof z.ZodDiscriminatedUnion))
    return described || schema.options.map(allowedBy).join(", or ");
  const key = schema.def.discriminator;
  const tags = schema.options.map(coreOf).flatMap((option) => {
    const tag = option instanceof z.ZodObject ? coreOf(option.shape[key]) : undefined;
    return tag instanceof z.ZodLiteral ? [...tag.values] : [];
  });
  return `${key} one of ${quoted(tags)}`;
}

/** @returns the description that a schema or one of its wrappers carries, "" without one */
export function descriptionOf(schema: z.core.$ZodType): string {
  const described = layersOf(schema).map((layer) => z.globalRegistry.get(layer)?.description);
  return described.find((text) => text !== undefined) ?? "";
}

/** @returns an example of what the schema takes, in JSON, "" where it knows none */
function exampleOf(schema: z.core.$ZodType): string {
  const known = layersOf(schema).flatMap((layer) => z.globalRegistry.get(layer)?.examples ?? []);
  return known.length === 0 ? "" : `, for example ${JSON.stringify(known[0])}`;
}

/** @returns what a schema takes, in words, with its limits and the example that it knows */
export function allowedBy(schema: z.core.$ZodType): string {
  const allowed = kindAllowed(coreOf(schema), descriptionOf(schema)) + exampleOf(schema);
  return layersOf(schema).some((layer) => layer instanceof z.ZodNullable) ? `${allowed}, or null` : allowed;
}
