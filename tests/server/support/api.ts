import type { Express } from "express";
import supertest from "supertest";
import { expect } from "vitest";
import { createApp } from "#server/app.ts";
import type { Lan } from "#server/lan/lan.ts";
import type { Store } from "#server/store/store.ts";
import { freshStore, steppingClock } from "./book.ts";
import { sampleBuild, samplePull, samples } from "./records.ts";

export interface Book {
  readonly store: Store;
  readonly app: Express;
  readonly api: ReturnType<typeof supertest>;
}

/**
 * A server on an empty book of its own; an error that it would have to log fails the test.
 *
 * @param lan - what it takes for its local network; none is served unless given
 */
export function freshBook(clock = steppingClock(), file?: string, lan?: Lan): Book {
  const store = freshStore(file);
  const log = (error: unknown) => {
    throw error;
  };
  const app = createApp({ store, clock, log, lan });
  return { store, app, api: supertest(app) };
}

/** One part of each collection, by the key with which a build points to it. */
export async function addParts({ api }: Book) {
  const add = async (path: string, body: object): Promise<string> => {
    const response = await api.post(`/api/v1/${path}`).send(body);
    expect(response.status, response.text).toBe(201);
    return response.body.id;
  };
  return {
    rotor: await add("rotors", samples.rotors),
    motor: await add("motors", samples.motors),
    pack: await add("packs", samples.packs),
    skirt: await add("skirts", samples.skirts),
    surface: await add("surfaces", samples.surfaces),
  };
}

/** The same, with a build and a pull test that use them. */
export async function addBook(book: Book) {
  const parts = await addParts(book);
  const build = await book.api.post("/api/v1/builds").send(sampleBuild(parts));
  const pull = await book.api.post("/api/v1/tests").send(samplePull(parts));
  return { parts, build: build.body, pull: pull.body };
}
