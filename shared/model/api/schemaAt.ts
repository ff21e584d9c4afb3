import { z } from "zod";

/** One step of a path into a value, as zod gives it. */
export type Path = readonly PropertyKey[];

/** @returns the value that a path leads to, undefined where it leads nowhere */
export function valueAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (inner, key) =>
      typeof inner === "object" && inner !== null && Object.hasOwn(inner, key)
        ? (inner as Record<PropertyKey, unknown>)[key]
        : undefined,
    value,
  );
}

/** @returns the schemas from the outermost wrapper (default, nullable, …) to the one that does the work */
export function layersOf(schema: z.core.$ZodType): z.core.$ZodType[] {
  if (
    schema instanceof z.ZodOptional ||
    schema instanceof z.ZodNullable ||
    schema instanceof z.ZodDefault ||
    schema instanceof z.ZodPrefault ||
    schema instanceof z.ZodReadonly
  ) {
    return [schema, ...layersOf(schema.def.innerType)];
  }
  if (schema instanceof z.ZodPipe) return [schema, ...layersOf(schema.def.in)];
  return [schema];
}

/** @returns the innermost schema under wrappers */
export function coreOf(schema: z.core.$ZodType): z.core.$ZodType {
  const layers = layersOf(schema);
  return layers[layers.length - 1];
}

/** The option of a union that the value means: by its discriminator (the default one where it says none), else the first that has children. */
function optionFor(union: z.ZodUnion, value: unknown): z.core.$ZodType | undefined {
  const options = union.options.map(coreOf);
  if (!(union instanceof z.ZodDiscriminatedUnion)) {
    return options.find((option) => option instanceof z.ZodObject || option instanceof z.ZodArray);
  }
  const key = union.def.discriminator;
  const said = valueAt(value, [key]);
  return options.find((option) => {
    if (!(option instanceof z.ZodObject)) return false;
    const tag = coreOf(option.shape[key]);
    if (said === undefined) return option.shape[key] instanceof z.ZodDefault;
    return tag instanceof z.ZodLiteral && tag.values.has(said as string);
  });
}

/** @returns the schema that looks into the value: under wrappers, and the meant option of a union */
export function objectOf(schema: z.core.$ZodType, value: unknown): z.core.$ZodType | undefined {
  const core = coreOf(schema);
  const option = core instanceof z.ZodUnion ? optionFor(core, value) : core;
  return option && coreOf(option);
}

const shapeAt = ({ shape }: z.ZodObject, key: string): z.core.$ZodType | undefined =>
  Object.hasOwn(shape, key) ? shape[key] : undefined;

function child(schema: z.core.$ZodType, key: PropertyKey, value: unknown): z.core.$ZodType | undefined {
  const core = objectOf(schema, value);
  if (core instanceof z.ZodObject) return shapeAt(core, String(key));
  if (core instanceof z.ZodArray) return core.element;
  if (core instanceof z.ZodTuple) return core.def.items[Number(key)];
  if (core instanceof z.ZodRecord) return core.valueType;
  return undefined;
}

/** @returns the schema that judged the value at a path, wrappers included; undefined where the schema has no such place */
export function schemaAt(schema: z.core.$ZodType, path: Path, input: unknown): z.core.$ZodType | undefined {
  let place: z.core.$ZodType | undefined = schema;
  for (const [depth, key] of path.entries()) {
    if (!place) return undefined;
    place = child(place, key, valueAt(input, path.slice(0, depth)));
  }
  return place;
}
