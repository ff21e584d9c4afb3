type Tree = { [key: string]: unknown };

function isTree(value: unknown): value is Tree {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** @returns what lies at a dotted path, undefined where nothing does */
export function getAt(data: unknown, path: string): unknown {
  return path
    .split(".")
    .reduce<unknown>((at, key) => (isTree(at) || Array.isArray(at) ? (at as Tree)[key] : undefined), data);
}

/** @returns a copy with the value at a dotted path; undefined takes the key away, and a group left empty with it */
export function setAt(data: Tree, path: string, value: unknown): Tree {
  const [key, ...rest] = path.split(".");
  const { [key]: before, ...others } = data;
  if (rest.length === 0) return value === undefined ? others : { ...data, [key]: value };
  const inner = setAt(isTree(before) ? before : {}, rest.join("."), value);
  return Object.keys(inner).length === 0 ? others : { ...data, [key]: inner };
}
