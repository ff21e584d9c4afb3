/**
 * Works something out once for as long as what it is of, and the ground that it is asked on, stay the same objects: while
 * a setting is dragged most of a picture does. Neither may be changed in place.
 *
 * @param make - from the data and their ground: a layout, the units shown
 * @returns the same, the last value of each data kept as long as they are
 */
export function keptOn<Of extends object, Ground, Value>(
  make: (of: Of, ground: Ground) => Value,
): (of: Of, ground: Ground) => Value {
  const kept = new WeakMap<Of, { readonly ground: Ground; readonly value: Value }>();
  return (of, ground) => {
    const found = kept.get(of);
    if (found && found.ground === ground) return found.value;
    const value = make(of, ground);
    kept.set(of, { ground, value });
    return value;
  };
}
