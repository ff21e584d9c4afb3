import { z } from "zod";
import { allowedBy } from "./allowed.ts";
import type { FieldError } from "./errors.ts";
import { coreOf, objectOf, type Path, schemaAt, valueAt } from "./schemaAt.ts";
import { shown } from "./shown.ts";

/** Refused fields that an answer names. */
const MOST_FIELDS = 100;

/** @returns a path as a person reads it: "rows.3.pressure.unit" */
export const dotted = (path: Path): string => path.map(String).join(".");

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

/** What the one option says that an object can only be meant for, where a union takes a name in its place as well. */
function issuesOfObject(
  issue: z.core.$ZodIssue,
  schema: z.core.$ZodType,
  input: unknown,
): z.core.$ZodIssue[] {
  if (issue.code !== "invalid_union" || isUnknownKind(issue)) return [];
  const value = valueAt(input, issue.path);
  const union = schemaAt(schema, issue.path, input);
  const core = union && coreOf(union);
  if (!(core instanceof z.ZodUnion && typeof value === "object" && value !== null)) return [];
  const meant = core.options.findIndex((option) => coreOf(option) instanceof z.ZodObject);
  return (issue.errors[meant] ?? []).map((inner) => ({ ...inner, path: [...issue.path, ...inner.path] }));
}

/** What one of zod's issues says, field by field: an issue of unknown keys speaks of each of them. */
function* fieldsOf(schema: z.core.$ZodType, issue: z.core.$ZodIssue, input: unknown): Iterable<FieldError> {
  const inner = issuesOfObject(issue, schema, input);
  if (inner.length > 0) {
    for (const each of inner) yield* fieldsOf(schema, each, input);
    return;
  }
  if (issue.code === "unrecognized_keys") {
    const allowed = keysAllowed(schemaAt(schema, issue.path, input), valueAt(input, issue.path));
    for (const key of issue.keys)
      yield {
        path: dotted([...issue.path, key]),
        message: sentence(`Unknown key ${shown(key)}${allowed}`),
      };
    return;
  }
  const place = isUnknownKind(issue) ? issue.path.slice(0, -1) : issue.path;
  const words = wordsOf(issue, schemaAt(schema, place, input), valueAt(input, issue.path));
  yield { path: dotted(issue.path), message: sentence(words) };
}

function* everyField(schema: z.core.$ZodType, { issues }: z.core.$ZodError, input: unknown) {
  for (const issue of issues) yield* fieldsOf(schema, issue, input);
}

/** What is wrong with an input. */
export interface Explained {
  /** the first {@link MOST_FIELDS} of them, in the order of the schema */
  readonly fields: readonly FieldError[];
  /** how many fields are refused in all */
  readonly count: number;
}

const fieldCount = (issue: z.core.$ZodIssue): number =>
  issue.code === "unrecognized_keys" ? issue.keys.length : 1;

/**
 * Turns what zod found into one message a field, in plain English: what was read, what is allowed, an example where the schema knows one.
 *
 * @param schema - that refused the input
 * @param error - what zod found
 * @param input - what was read
 */
export function explain(schema: z.core.$ZodType, error: z.core.$ZodError, input: unknown): Explained {
  const fields: FieldError[] = [];
  for (const field of everyField(schema, error, input)) {
    fields.push(field);
    if (fields.length === MOST_FIELDS) break;
  }
  return { fields, count: error.issues.reduce((sum, issue) => sum + fieldCount(issue), 0) };
}
