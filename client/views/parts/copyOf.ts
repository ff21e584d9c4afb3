const MOST_LETTERS = 120;
const COPY = ", copy";

/** @returns what a record says under a name that none has yet, in use whether the first is or not */
export function copyOf(
  { retired: _outOfUse, ...data }: Readonly<Record<string, unknown>>,
  taken: readonly string[],
): Record<string, unknown> {
  const name = (ending: string) => `${String(data.name).slice(0, MOST_LETTERS - ending.length)}${ending}`;
  for (let i = 1; ; i++) {
    const tried = name(i === 1 ? COPY : `${COPY} ${i}`);
    if (!taken.includes(tried)) return { ...data, name: tried };
  }
}
