import { z } from "zod";
import { allowedBy } from "./allowed.ts";
import type { FieldError } from "./errors.ts";
import { objectOf, type Path, schemaAt, valueAt } from "./schemaAt.ts";

const SHOWN_CHARACTERS = 60;

/** @returns a path as a person reads it: "rows.3.pressure.unit" */
export const dotted = (path: Path): string => path.map(String).join(".");

function shown(value: unknown): string {
  if (typeof value === "number") return String(value);
  const text = JSON.stringify(value) ?? String(value);
  return text.length > SHOWN_CHARACTERS ? `${text.slice(0, SHOWN_CHARACTERS)}…` : text;
}

const sentence = (text: string): string => {
  const [first = "", ...rest] = text.trim();
  const capital = first.toUpperCase() + rest.join("");
  return /[.?!]$/.test(capital) ? capital : `${capital}.`;
};

const read = (value: unknown): string => (value === undefined ? "Missing" : `Read ${shown(value)}`);

function keysAllowed(schema: z.core.$ZodType | undefined, value: unknown): string {
  const object = schema && objectOf(schema, value);
  return object instanceof z.ZodObject ? `; allowed: ${Object.keys(object.shape).join(", ")}` : "";
}

/** Words of the schema's author stand as they are; ours name what was read and what is allowed. */
function wordsOf(issue: z.core.$ZodIssue, schema: z.core.$ZodType | undefined, value: unknown): string {
  if (issue.code === "custom") return issue.message;
  if (issue.code === "invalid_format" && issue.format === "regex")
    return `${read(value)}; allowed: ${issue.message}`;
  if (issue.code === "too_small" && issue.origin === "array")
    return `${read(value)}; allowed: at least ${issue.minimum} in the list`;
  if (issue.code === "too_big" && (issue.origin === "array" || issue.origin === "string"))
    return `${read(value)}; allowed: at most ${issue.maximum} ${issue.origin === "array" ? "in the list" : "characters"}`;
  return `${read(value)}; allowed: ${schema ? allowedBy(schema) : issue.message}`;
}

/** The key that tells a union's options apart names none of them: what is allowed is the union's to say. */
const isUnknownKind = (issue: z.core.$ZodIssue): boolean =>
  issue.code === "invalid_union" && issue.discriminator !== undefined;

function fieldsOf(schema: z.core.$ZodType, issue: z.core.$ZodIssue, input: unknown): FieldError[] {
  if (issue.code === "unrecognized_keys") {
    const allowed = keysAllowed(schemaAt(schema, issue.path, input), valueAt(input, issue.path));
    return issue.keys.map((key) => ({
      path: dotted([...issue.path, key]),
      message: sentence(`Unknown key ${shown(key)}${allowed}`),
    }));
  }
  const place = isUnknownKind(issue) ? issue.path.slice(0, -1) : issue.path;
  const words = wordsOf(issue, schemaAt(schema, place, input), valueAt(input, issue.path));
  return [{ path: dotted(issue.path), message: sentence(words) }];
}

/**
 * Turns what zod found into one message a field, in plain English: what was read, what is allowed, an example where the schema knows one.
 *
 * @param schema - that refused the input
 * @param error - what zod found
 * @param input - what was read
 */
export function explain(schema: z.core.$ZodType, error: z.core.$ZodError, input: unknown): FieldError[] {
  return error.issues.flatMap((issue) => fieldsOf(schema, issue, input));
}
