import type { Book } from "#shared/book/book.ts";
import { NAMED_IN_TESTS } from "#shared/book/testsAsked.ts";
import type { StoredOf } from "#shared/model/record.ts";

const PARTS = ["rotors", "motors", "packs", "skirts", "surfaces", "gears"] as const;
const DAY = 24 * 3600 * 1000;
/** On days before and after those of the demo. */
const FIRST = Date.parse("2024-01-01T00:00:00Z");
const DAYS = 1500;

interface Crowd {
  /** how many other makers' parts stand beside the demo's */
  readonly groups: number;
  /** how many tests there are altogether, the demo's among them */
  readonly tests: number;
}

const idIn = (group: number, id: string): string => `g${group}-${id}`;

function named(data: object, group: number): object {
  const said = data as Readonly<Record<string, unknown>>;
  const own = NAMED_IN_TESTS.flatMap((key) => {
    const id = said[key];
    return typeof id === "string" ? [[key, idIn(group, id)] as const] : [];
  });
  return { ...data, ...Object.fromEntries(own) };
}

/** The demo's tests that name no build, again and again, as made with other makers' parts; one at a time. */
export function* crowdOfTests(demo: Book, { groups, tests }: Crowd): Generator<StoredOf<"tests">> {
  const copied = demo.tests.filter(({ data }) => !("build" in data && data.build));
  for (let i = 0; i < tests - demo.tests.length; i++) {
    const { data } = copied[i % copied.length];
    const group = Math.floor(i / copied.length) % groups;
    const at = new Date(FIRST + (i % DAYS) * DAY).toISOString();
    const own = { ...named(data, group), title: `Other ${i}`, date: at.slice(0, 10) };
    yield {
      id: `other-${i}`,
      revision: 1,
      createdAt: at,
      updatedAt: at,
      data: own as StoredOf<"tests">["data"],
    };
  }
}

/** @returns the demo with the parts of other makers beside its own, and no test of theirs */
export function crowdOfParts(demo: Book, { groups }: Pick<Crowd, "groups">): Book {
  const others = PARTS.map((name) => {
    const records = Array.from({ length: groups }, (_, group) =>
      demo[name].map((record) => ({
        ...record,
        id: idIn(group, record.id),
        data: { ...record.data, name: `${record.data.name}, maker ${group + 1}` },
      })),
    ).flat();
    return [name, [...demo[name], ...records]];
  });
  return { ...demo, ...Object.fromEntries(others) };
}

/** @returns the demo with many tests of other parts beside its own, before and behind them */
export function crowdedBook(demo: Book, crowd: Crowd): Book {
  const parts = crowdOfParts(demo, crowd);
  const tests = [...demo.tests, ...crowdOfTests(demo, crowd)];
  return { ...parts, tests: tests.sort((a, b) => b.data.date.localeCompare(a.data.date)) };
}
