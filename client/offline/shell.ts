/** The files that a build's pages are made of, as the build lists them. */
export interface Shell {
  /** of the cache that keeps them: another for every build */
  readonly name: string;
  /** addresses under which they are served */
  readonly files: readonly string[];
}

/** Begins the name of every cache of ours. */
export const SHELLS = "gripcurve shell ";
/** The page of every screen; which one it shows, it reads from its address. */
const PAGE = "/";
/** A page still open may ask for files of the build before. */
const KEPT_BUILDS = 2;
/** How long a server may take for a page until the kept one is shown [ms]. */
const LATE = 4_000;

/** A page that a stranger is led to, or that another program answers, is none of ours. */
async function pageOfServer(): Promise<Response> {
  const response = await fetch(PAGE, { cache: "no-cache" });
  if (!response.ok || response.redirected)
    throw new Error(`No page, but ${response.status} at ${response.url}.`);
  return response;
}

/** Keeps a build's files, all or none. */
export async function keepShell({ name, files }: Shell): Promise<void> {
  const cache = await caches.open(name);
  const page = await pageOfServer();
  await cache.addAll([...files]);
  await cache.put(PAGE, page);
}

/** Forgets builds that no open page can need any more. */
export async function forgetOldShells({ name }: Shell): Promise<void> {
  const others = (await caches.keys()).filter((each) => each.startsWith(SHELLS) && each !== name);
  const old = others.slice(0, Math.max(0, others.length - (KEPT_BUILDS - 1)));
  await Promise.all(old.map((each) => caches.delete(each)));
}

/** The server's page, so that a new build is shown at once; the kept one where no server answers in time. */
async function pageOf(request: Request, { name }: Shell): Promise<Response> {
  const kept = await (await caches.open(name)).match(PAGE);
  const asked = fetch(request);
  if (!kept) return asked;
  const late = new Promise<null>((resolve) => setTimeout(resolve, LATE, null));
  return (await Promise.race([asked.catch(() => null), late])) ?? kept;
}

/** A name under /assets never means other content: what is kept needs no question. */
const fileOf = async (request: Request): Promise<Response> => (await caches.match(request)) ?? fetch(request);

/** Pages that are not of the shell, and addresses of files. */
const IS_ELSEWHERE = /^\/(?:api|docs|pair)(?:\/|$)|\.\w+$/;

/** @returns what is answered without the server, or may be; null where a request is the server's alone */
export function answerTo(request: Request, shell: Shell, origin: string): Promise<Response> | null {
  const { origin: asked, pathname } = new URL(request.url);
  if (request.method !== "GET" || asked !== origin) return null;
  if (pathname.startsWith("/assets/")) return fileOf(request);
  return request.mode === "navigate" && !IS_ELSEWHERE.test(pathname) ? pageOf(request, shell) : null;
}
