/** Builds that lack something, made of the demo's parts through the API. */
export interface PartialBook {
  /** nobody tilted it on its glass */
  readonly noFriction: string;
  /** its curve tests name no motor */
  readonly noPower: string;
  /** its pack has neither curve nor chemistry nor discharge test */
  readonly noCell: string;
  /** all three at once */
  readonly nothing: string;
  /** a propeller's, all three at once */
  readonly propeller: string;
  /** its rotor has neither curve test nor geometry */
  readonly noCurve: string;
}

type Data = Readonly<Record<string, unknown>>;

const PANE = "pane-crawler";
const SCOUT = "prop-scout";

/** Reads and writes one server's book. */
function bookAt(address: string) {
  const url = (path: string) => `${address}/api/v1/${path}`;
  const read = async (path: string): Promise<Data> => {
    const response = await fetch(url(path));
    return ((await response.json()) as { data: Data }).data;
  };
  const add = async (collection: string, data: Data): Promise<string> => {
    const response = await fetch(url(collection), {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(data),
    });
    if (response.status !== 201) throw new Error(`${collection}: ${await response.text()}`);
    return ((await response.json()) as { id: string }).id;
  };
  return { read, add };
}

type Book = ReturnType<typeof bookAt>;

async function looseGlass({ read, add }: Book): Promise<string> {
  const { wheelFriction: _stated, ...glass } = await read("surfaces/side-pane");
  return add("surfaces", { ...glass, name: "Frosted pane, not yet tilted" });
}

async function unmarkedPack({ read, add }: Book): Promise<string> {
  const pack = await read("packs/two-cell-450");
  const { curve: _stated, chemistry: _published, ...cell } = pack.cell as Data;
  return add("packs", { ...pack, name: "Unmarked two cells", cell });
}

/** A copy of a rotor with its tests, in none of which a motor is named. */
async function unpoweredRotor({ read, add }: Book, rotor: string, tests: readonly string[]): Promise<string> {
  const copy = await add("rotors", {
    ...(await read(`rotors/${rotor}`)),
    name: `${rotor}, current not logged`,
  });
  for (const id of tests) await add("tests", { ...(await read(`tests/${id}`)), rotor: copy, motor: null });
  return copy;
}

/** @returns the builds, stored in the book of a server that holds the demo */
export async function partialBook(address: string): Promise<PartialBook> {
  const book = bookAt(address);
  const [surface, pack] = [await looseGlass(book), await unmarkedPack(book)];
  const rotor = await unpoweredRotor(book, "swept-nine", ["demo-03-curve", "demo-04-curve"]);
  const pusher = await unpoweredRotor(book, "pusher-three", ["demo-29-thrust", "demo-30-thrust"]);
  const bare = await book.add("rotors", { name: "Untested nine", sizes: [{ diameter: 0.044 }] });
  const [pane, scout] = [await book.read(`builds/${PANE}`), await book.read(`builds/${SCOUT}`)];
  const build = (of: Data, name: string, change: Data) => book.add("builds", { ...of, name, ...change });
  return {
    noFriction: await build(pane, "Untilted crawler", { surface }),
    noPower: await build(pane, "Ammeterless crawler", { rotor }),
    noCell: await build(pane, "Unmarked crawler", { pack }),
    nothing: await build(pane, "Unknown crawler", { surface, pack, rotor }),
    propeller: await build(scout, "Unknown scout", { surface, pack, rotor: pusher }),
    noCurve: await build(pane, "Curveless crawler", { rotor: bare }),
  };
}
