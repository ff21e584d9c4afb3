import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { freshBook } from "./support/api.ts";

const text = readFileSync(new URL("../../docs/api.md", import.meta.url), "utf8");
const ADDRESS = "http://127.0.0.1:4310";

interface Request {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | null;
  readonly streams: boolean;
}

/** Words of a shell line, in single quotes or bare; a line that ends in a backslash goes on. */
function wordsOf(command: string): string[] {
  return [...command.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare);
}

/** What a curl command asks, by the options that the page uses; any other fails the test. */
function requestOf(command: string): Request {
  const [program, ...words] = wordsOf(command.replaceAll("\\\n", " "));
  expect(program).toBe("curl");
  let [method, body]: (string | null)[] = [null, null];
  const headers: Record<string, string> = {};
  let [url, streams] = ["", false];
  while (words.length > 0) {
    const word = words.shift() ?? "";
    const next = () => words.shift() ?? "";
    if (word === "-X") method = next();
    else if (word === "-d") body = next();
    else if (word === "-o") next();
    else if (word === "-N") streams = true;
    else if (word === "-H") {
      const [name, ...value] = next().split(":");
      headers[name] = value.join(":").trim();
    } else if (word !== "-i") url = word;
  }
  expect(url.startsWith(ADDRESS), url).toBe(true);
  return {
    method: method ?? (body === null ? "GET" : "POST"),
    path: url.slice(ADDRESS.length),
    headers,
    body,
    streams,
  };
}

const commands = [...text.matchAll(/```sh\n([\s\S]*?)```/g)]
  .flatMap(([, block]) => block.split(/\n(?=curl )/))
  .map((command) => command.trim());

describe("docs/api.md", () => {
  it("its examples, pasted one after the other on a server that holds the demo: each is answered", async () => {
    const { app, api } = freshBook();
    await api.post("/api/v1/bench/demo").send({}).expect(201);
    const server = app.listen(0, "127.0.0.1");
    await new Promise((resolve) => server.once("listening", resolve));
    const address = server.address();
    if (address === null || typeof address === "string") throw new Error("The server has no port.");
    expect(commands.length).toBeGreaterThan(10);
    try {
      for (const command of commands) {
        const { method, path, headers, body, streams } = requestOf(command);
        const response = await fetch(`http://127.0.0.1:${address.port}${path}`, { method, headers, body });
        expect(
          response.status,
          `${command}\n${response.ok || streams ? "" : await response.text()}`,
        ).toBeLessThan(300);
        await response.body?.cancel();
      }
    } finally {
      server.closeAllConnections();
      server.close();
    }
  });

  it("its example of a change: is stored, and needs the revision that it names", () => {
    const [change, ...others] = commands.map(requestOf).filter(({ method }) => method === "PUT");
    expect(others).toEqual([]);
    expect(change.headers["If-Match"]).toBe('"1"');
  });
});
