import { once } from "node:events";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";
import { createApp } from "./app.ts";
import { type Config, configFrom, exposureOf, isThisMachine } from "./config.ts";
import { keepDailyCopies } from "./dailyCopies.ts";
import { loadDemoOnFirstStart } from "./demo.ts";
import { Jobs } from "./jobs/jobs.ts";
import { ANY_ADDRESS, lanInWords, lanServer } from "./lan/serveLan.ts";
import { BookAnswers } from "./routes/bookAnswers.ts";
import { wordsOf } from "./startError.ts";
import { patiently } from "./store/patience.ts";
import { openStore } from "./store/store.ts";
import { removeLeftFolders } from "./tempFolder.ts";
import { pool } from "./threads/pool.ts";
import { workAhead } from "./workedAhead.ts";

/** A connection that nothing is asked on is kept this long [ms]: longer than clients keep theirs, so that none asks on one that is just being closed. */
const IDLE_KEPT = 75_000;

/** How often the file is asked whether another server wrote to it [ms]. */
const LOOK_FOR_OTHERS = 1_000;

/** How long running requests may take after the signal to stop [ms]. */
const PATIENCE = 3_000;

/** Built, this file lies in .build/server; the built client lies beside that folder. */
const CLIENT = fileURLToPath(new URL("../client", import.meta.url));
/** The worker is built beside this file. */
const WORKER = fileURLToPath(new URL("./worker.js", import.meta.url));

/** Stops listening, lets what is being answered end, and then breaks it off. */
async function closed(server: Server): Promise<void> {
  if (!server.listening) return;
  const end = once(server, "close");
  server.close();
  server.closeIdleConnections();
  setTimeout(() => server.closeAllConnections(), PATIENCE).unref();
  await end;
}

async function listening(server: Server, port: number, host: string): Promise<void> {
  server.keepAliveTimeout = IDLE_KEPT;
  server.listen(port, host);
  await once(server, "listening");
}

async function start(config: Config): Promise<void> {
  const { port, host, names, file, logsRequests, dailyCopies, lanPort } = config;
  const clock = () => new Date();
  removeLeftFolders();
  const store = openStore(file, clock());
  await patiently(() => loadDemoOnFirstStart(store, clock()));
  const network =
    lanPort === null
      ? null
      : await lanServer(
          file,
          names.filter((name) => !isThisMachine(name)),
          clock(),
        );
  const threads = pool(WORKER);
  const jobs = new Jobs(threads, clock, console.error);
  const answers = new BookAnswers(store);
  const looking = setInterval(() => store.lookForOthers(), LOOK_FOR_OTHERS);
  const endCopies = keepDailyCopies(threads, { file, clock, keep: dailyCopies, log: console.error });
  const logRequest = logsRequests ? console.error : undefined;
  const app = createApp({
    store,
    clock,
    client: CLIENT,
    names,
    lan: network?.lan,
    threads,
    jobs,
    answers,
    logRequest,
  });
  const servers = [createServer(app), ...(network ? [network.server.on("request", app)] : [])];
  let endAhead = () => {};
  const stop = async () => {
    clearInterval(looking);
    endCopies();
    endAhead();
    store.feed.close();
    void jobs.close();
    await Promise.all(servers.map(closed));
    store.close();
  };
  process.once("SIGTERM", stop);
  process.once("SIGINT", stop);
  const [own, overNetwork] = servers;
  try {
    if (lanPort !== null) await listening(overNetwork, lanPort, ANY_ADDRESS);
    await listening(own, port, host);
  } catch (error) {
    await stop();
    throw error;
  }
  endAhead = workAhead({ store, threads, answers });
  const exposure = exposureOf(config);
  if (exposure) console.warn(exposure);
  const { port: taken } = own.address() as AddressInfo;
  console.log(`Gripcurve is ready at http://${host.includes(":") ? `[${host}]` : host}:${taken}`);
  if (network) console.log(lanInWords(network.lan));
}

function fail(error: unknown, config?: Config): void {
  console.error(wordsOf(error, config));
  process.exitCode = 1;
}

try {
  const config = configFrom(process.env, process.argv.slice(2));
  start(config).catch((error: unknown) => fail(error, config));
} catch (error) {
  fail(error);
}
