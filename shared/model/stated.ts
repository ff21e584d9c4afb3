import { z } from "zod";
import { coreOf } from "./api/schemaAt.ts";

/** Where a schema keeps its figures: dotted paths, "*" for the place in a list. */
interface Paths {
  readonly numbers: readonly string[];
  /** groups, lists and fields of any type */
  readonly fields: readonly string[];
}

const NONE: Paths = { numbers: [], fields: [] };

const both = (parts: readonly Paths[]): Paths => ({
  numbers: parts.flatMap(({ numbers }) => numbers),
  fields: parts.flatMap(({ fields }) => fields),
});

const under = (path: string, key: string): string => (path === "" ? key : `${path}.${key}`);

function pathsUnder(schema: z.core.$ZodType, path: string): Paths {
  const core = coreOf(schema);
  const inside = (keyed: readonly (readonly [string, z.core.$ZodType])[]) =>
    both([
      path === "" ? NONE : { numbers: [], fields: [path] },
      ...keyed.map(([key, inner]) => pathsUnder(inner, under(path, key))),
    ]);
  if (core instanceof z.ZodObject) return inside(Object.entries(core.shape));
  if (core instanceof z.ZodUnion) return both(core.options.map((option) => pathsUnder(option, path)));
  if (core instanceof z.ZodArray) return inside([["*", core.element]]);
  if (core instanceof z.ZodTuple) return inside(core.def.items.map((item) => ["*", item] as const));
  return core instanceof z.ZodNumber ? { numbers: [path], fields: [path] } : { numbers: [], fields: [path] };
}

/** "rotor.psi.2" is at "rotor.psi.*". */
const general = (path: string): string => path.replace(/(^|\.)\d+(?=\.|$)/g, "$1*");

interface Check {
  readonly allowed: readonly string[];
  readonly example: string;
}

/** A typing error in such a path would be kept and never be read. */
function refuseUnknown(paths: readonly string[], { allowed, example }: Check): readonly [string, string][] {
  const known = new Set(allowed);
  return paths
    .filter((path) => !known.has(general(path)))
    .map((path) => [
      path,
      `There is no figure ${JSON.stringify(path)}; allowed: ${[...known].join(", ")}, for example "${example}".`,
    ]);
}

/** Standard uncertainties by the path of their number, in its SI unit; any other path is refused. */
function uncertaintyByPath(check: Check) {
  return z
    .record(z.string().max(64), z.number().min(0).max(1e12))
    .default({})
    .superRefine((by, context) => {
      for (const [path, message] of refuseUnknown(Object.keys(by), check))
        context.addIssue({ code: "custom", path: [path], message });
    })
    .describe(`standard uncertainty by path, in the number's unit, for example ${check.example}`);
}

/**
 * What a maker says of the figures above it: which are guessed, what each is uncertain by.
 *
 * @param shape - the part's own fields
 * @param earlier - keys that books have from before a figure had its path
 */
export function statedOf(shape: z.core.$ZodShape, earlier: readonly string[] = []) {
  const { numbers, fields } = pathsUnder(z.object(shape), "");
  const [example] = numbers;
  const paths = { allowed: fields, example };
  return {
    estimated: z
      .array(z.string().max(64))
      .max(40)
      .default([])
      .superRefine((marked, context) => {
        for (const [path, message] of refuseUnknown(marked, paths))
          context.addIssue({ code: "custom", path: [marked.indexOf(path)], message });
      })
      .describe(
        "paths of fields whose value is a guess or a maker's figure, not a measurement; shown with a mark everywhere",
      ),
    uncertainty: uncertaintyByPath({ allowed: [...numbers, ...earlier], example }),
  };
}

/**
 * What a build says its numbers are uncertain by, before whatever parts and tests say of them.
 *
 * @param schema - the numbers that a prediction takes
 * @param others - further numbers of the build
 */
export function uncertaintyOfInput(schema: z.core.$ZodType, others: readonly string[]) {
  const { numbers } = pathsUnder(schema, "");
  return uncertaintyByPath({ allowed: [...new Set([...numbers, ...others])], example: "skirt.gap" });
}
