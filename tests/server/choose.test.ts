import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { loadDemo } from "#server/demo.ts";
import { findById } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { buildOfCombination } from "#shared/book/choose/openedCombination.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { runInput } from "#shared/book/runInput.ts";
import { verdictCase } from "#shared/book/verdictCase.ts";
import { keepForMargin } from "#shared/decide/size/keep.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { found } from "#shared/decide/verdict/judge.ts";
import { isDestroyed, rankOf } from "#shared/decide/verdict/states.ts";
import { verdictOf } from "#shared/decide/verdict/verdict.ts";
import {
  chooseJob,
  combination,
  combinationsPage,
  missedAnswer,
  pointsAnswer,
  shortlistAnswer,
  toldCombinations,
} from "#shared/model/api/choose.ts";
import type { RotorInput } from "#shared/physics/point/machine.ts";
import { predict } from "#shared/physics/predict.ts";
import type { SkirtInput } from "#shared/physics/skirt.ts";
import { chooseBody } from "#tests/support/chooseQuestion.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { freshBook } from "./support/api.ts";

function demoServer() {
  const book = freshBook();
  loadDemo(book.store, new Date("2026-03-01T08:00:00Z"));
  return book;
}

type Api = ReturnType<typeof demoServer>["api"];

async function chosen(api: Api, change: object = {}): Promise<string> {
  const begun = await api.post("/api/v1/choose").send(chooseBody(change));
  expect(begun.status, begun.text).toBe(202);
  const { id } = chooseJob.parse(begun.body);
  expect(begun.headers.location).toBe(`/api/v1/choose/${id}`);
  const events = await api.get(`/api/v1/choose/${id}/events`);
  expect(events.text).toContain("event: progress");
  expect(events.text).toMatch(/event: done\ndata: .*"state":"done"/);
  return `/api/v1/choose/${id}`;
}

describe("POST /choose, on the demo", () => {
  it("ends with every combination solved, and each of its answers is as its schema says", async () => {
    const { api } = demoServer();
    const at = await chosen(api);
    const job = chooseJob.parse((await api.get(at)).body);
    expect(job).toMatchObject({ state: "done", solved: job.sets });
    const page = combinationsPage.parse((await api.get(`${at}/sets?limit=500`)).body);
    expect(page.total).toBe(job.admissible);
    const margins = page.items.map(({ values }) => values.margin ?? Number.POSITIVE_INFINITY);
    expect(margins).toEqual([...margins].sort((a, b) => b - a));
    for (const { broken } of page.items) expect(broken).toEqual([]);
    const points = pointsAnswer.parse((await api.get(`${at}/points?x=mass&y=time`)).body);
    expect(points.total).toBe(job.sets);
    const missed = missedAnswer.parse((await api.get(`${at}/missed`)).body);
    expect(missed.admissible).toBe(job.admissible);
  });

  // The build that a combination is opened as goes through the book, the fits and /predict's own solver: another way to the same numbers.
  it("every twentieth combination, opened as a build, predicts the same margin, pull and current to 1e-9", async () => {
    const { api } = demoServer();
    const at = await chosen(api, { wants: { attitudes: [{ angle: 90, mode: "driving" }] } });
    const book = demoBook();
    const base = book.builds.find(({ id }) => id === "pane-crawler");
    if (!base) throw new Error("the demo has no pane crawler");
    const { sets } = (await api.get(at)).body;
    for (let index = 0; index < sets; index += 20) {
      const found = combination.parse((await api.get(`${at}/set?index=${index}`)).body);
      const build = buildOfCombination(book, base.data, { ...found, mass: found.values.mass ?? 0 });
      const { input } = resolveBuild(book, build);
      if (!input) throw new Error(`combination ${index} is no build`);
      const { suction, point, attitudes } = predict(input);
      expect(found.values.suction).toBeCloseToRelative(suction, 1e-9);
      expect(found.values.packCurrent).toBeCloseToRelative(point?.packCurrent ?? 0, 1e-9);
      expect(found.values.driving).toBeCloseToRelative(attitudes[1].driving.margin ?? 0, 1e-9);
    }
  });

  // The run-down takes the opened build and goes second by second: another way to the same minutes. Without its τ_th, as the search takes the winding: settled.
  it("ranked by the minutes that a controller keeps the margin, each as POST /rundown with keep of the opened build", async () => {
    const { api } = demoServer();
    const attitudes = [
      { angle: 90, mode: "driving" },
      { angle: "worst", mode: "driving" },
    ] as const;
    const at = await chosen(api, { wants: { attitudes, targetMargin: 1.5, leastKeptTime: 0 } });
    const page = combinationsPage.parse((await api.get(`${at}/sets?sort=keptTime&limit=500`)).body);
    const times = page.items.map(({ values }) => values.keptTime ?? Number.NaN);
    expect(times.length).toBeGreaterThan(20);
    expect(times).toEqual([...times].sort((a, b) => b - a));
    const book = demoBook();
    const base = book.builds.find(({ id }) => id === "pane-crawler");
    if (!base) throw new Error("the demo has no pane crawler");
    for (const combination of page.items.filter((_, i) => i % 25 === 0)) {
      const build = buildOfCombination(book, base.data, { ...combination, mass: combination.values.mass });
      const run = runInput(build, resolveBuild(book, build));
      if (!run) throw new Error(`combination ${combination.index} is no build`);
      const keep = keepForMargin(run, { ...attitudes[1], margin: 1.5 });
      const { thermalTimeConstant: _quick, ...motor } = run.motor;
      const { landFriction: _usual, ...skirt } = run.skirt as SkirtInput;
      const rotor = run.rotor as RotorInput;
      const { applied: _whole, ...sizeCorrection } = rotor.sizeCorrection ?? { applied: 1 };
      const turned = rotor.sizeCorrection ? { ...rotor, sizeCorrection } : rotor;
      const asked = { ...run, rotor: turned, motor, skirt, cycle: undefined, keep, step: 0.2 };
      const answered = await api.post("/api/v1/rundown").send(asked);
      expect(answered.status, answered.text).toBe(200);
      const { end, keep: kept } = answered.body;
      expect(combination.values.keptTime).toBeCloseToRelative(kept.fullThrottleFrom ?? end.time, 1e-6);
    }
    const csv = (await api.get(`${at}/sets.csv?sort=keptTime`)).text.split("\r\n");
    const column = csv[0].split(",").indexOf("keptTime");
    expect(csv.slice(1, 6).map((line) => Number(line.split(",")[column]))).toEqual(times.slice(0, 5));
  });

  it("no minutes kept where they are no wish, and fewer combinations work where more are wanted than the best has", async () => {
    const { api } = demoServer();
    const without = await chosen(api);
    const [best] = combinationsPage.parse((await api.get(`${without}/sets?limit=1`)).body).items;
    expect(best.values.keptTime).toBeNull();
    const at = await chosen(api, { wants: { leastKeptTime: 1e5 } });
    const missed = missedAnswer.parse((await api.get(`${at}/missed`)).body);
    expect(missed.admissible).toBe(0);
    const relaxed = missed.relaxations.find(({ limit }) => limit === "keptTime");
    expect(relaxed?.to).toBeGreaterThan(0);
    const found = combination.parse((await api.get(`${at}/set?index=${relaxed?.index}`)).body);
    expect(found.values.keptTime).toBe(relaxed?.to);
  });

  it("tells combinations while it is solved: each meets every limit, and none has more margin than the best page's first", async () => {
    const { api } = demoServer();
    const at = await chosen(api);
    const { text } = await api.get(`${at}/events`);
    const told = [...text.matchAll(/event: sets\ndata: (.*)\n/g)].flatMap(
      ([, data]) => toldCombinations.parse(JSON.parse(data)).best,
    );
    expect(told.length).toBeGreaterThan(0);
    const [first] = combinationsPage.parse((await api.get(`${at}/sets?limit=1`)).body).items;
    const margins = told.map(({ values }) => values.margin ?? Number.POSITIVE_INFINITY);
    expect(Math.max(...margins)).toBe(first.values.margin ?? Number.POSITIVE_INFINITY);
    for (const { broken } of told) expect(broken).toEqual([]);
  });

  it("asked again is the same job at once, with 200", async () => {
    const { api } = demoServer();
    const at = await chosen(api);
    const again = await api.post("/api/v1/choose").send(chooseBody());
    expect(again.status).toBe(200);
    expect(again.headers.location).toBe(at);
    expect(again.body.state).toBe("done");
  });

  it("as a table has a line for each admissible combination and no empty margin", async () => {
    const { api } = demoServer();
    const at = await chosen(api);
    const { admissible } = (await api.get(at)).body;
    const table = await api.get(`${at}/sets.csv`);
    expect(table.headers["content-type"]).toContain("text/csv");
    const lines = table.text.trimEnd().split("\r\n");
    expect(lines).toHaveLength(admissible + 1);
    const place = lines[0].split(",").indexOf("margin");
    for (const line of lines.slice(1)) expect(Number(line.split(",")[place])).toBeGreaterThanOrEqual(1.5);
  });

  it("its shortlist is ranked by the margin that 95 % reach, and agrees with the uncertainty of the combination opened as a build", async () => {
    const { api } = demoServer();
    const at = await chosen(api, { wants: { attitudes: [{ angle: 90, mode: "driving" }] } });
    const answer = shortlistAnswer.parse((await api.get(`${at}/shortlist?count=2`)).body);
    expect(answer.undoubted).toBe(false);
    expect(answer.items).toHaveLength(2);
    const ranks = answer.items.map(({ verdict }) => rankOf(verdict.state));
    expect(ranks).toEqual([...ranks].sort((a, b) => b - a));
    const sure = answer.items.map(({ margin5 }) => margin5 ?? Number.POSITIVE_INFINITY);
    const alike = sure.filter((_, i) => ranks[i] === ranks[0]);
    expect(alike).toEqual([...alike].sort((a, b) => b - a));
    expect(answer.items[0].place).toBe(1);
    const book = demoBook();
    const [{ set: combination, margin5, chance, verdict }] = answer.items;
    const base = findById(book.builds, "pane-crawler");
    if (!base) throw new Error("the demo has no pane crawler");
    const build = buildOfCombination(book, base.data, { ...combination, mass: combination.values.mass ?? 0 });
    const resolved = resolveBuild(book, build);
    if (!resolved.input) throw new Error("the combination is no build");
    const { sources: _said, ...uncertain } = buildUncertainty(book, build, resolved);
    const [wall] = uncertaintyOf(resolved.input, { ...uncertain, angles: [90] }).attitudes;
    expect(margin5).toBeCloseToRelative(wall.driving.p5 ?? 0, 1e-9);
    expect(chance).toBe(wall.driving.holds);
    const of = verdictCase(book, build, resolved);
    const { state, least } = verdictOf(found(of ?? expect.fail("the combination is no build")));
    expect(verdict).toMatchObject(isDestroyed(state) ? { state } : { state, margin: least?.margin });
  });

  it("deleted is gone: state, combinations and events are 404", async () => {
    const { api } = demoServer();
    const at = await chosen(api);
    expect((await api.delete(at)).status).toBe(204);
    for (const path of ["", "/sets", "/points", "/missed", "/events", "/sets.csv", "/set?index=0"])
      expect((await api.get(at + path)).status, path).toBe(404);
    expect((await api.delete(at)).status).toBe(404);
  });

  it("with limits that nothing meets tells the nearest combinations and what to relax, by how much", async () => {
    const { api } = demoServer();
    const at = await chosen(api, { wants: { targetMargin: 6, ratings: false } });
    const missed = missedAnswer.parse((await api.get(`${at}/missed`)).body);
    expect(missed.admissible).toBe(0);
    expect(missed.relaxations).toHaveLength(1);
    const [{ limit, from, to, index }] = missed.relaxations;
    expect({ limit, from }).toEqual({ limit: "driving", from: 6 });
    const found = combination.parse((await api.get(`${at}/set?index=${index}`)).body);
    expect(found.values.driving).toBe(to);
    const relaxed = await chosen(api, { wants: { targetMargin: to, ratings: false } });
    expect((await api.get(relaxed)).body.admissible).toBeGreaterThanOrEqual(1);
    const tighter = await chosen(api, { wants: { targetMargin: to * 1.000001, ratings: false } });
    expect((await api.get(tighter)).body.admissible).toBe(0);
  });
});

describe("POST /choose, with what can't be", () => {
  const refused = async (change: object) => {
    const { api } = demoServer();
    const answer = await api.post("/api/v1/choose").send({ ...chooseBody(), ...change });
    return { status: answer.status, ...answer.body.error };
  };

  it.each([
    ["no motor", { motors: [] }, 400, "motors"],
    [
      "a step of 0",
      { rotors: [{ rotor: "swept-nine", diameters: { from: 0.03, to: 0.04, step: 0 } }] },
      400,
      "rotors.0.diameters.step",
    ],
    [
      "a rotor of no size",
      { rotors: [{ rotor: "swept-nine", diameters: { from: 0, to: 0.04, step: 0.01 } }] },
      400,
      "rotors.0.diameters.from",
    ],
    [
      "an end before its start",
      { skirts: [{ skirt: "square-lip", gaps: { from: 0.001, to: 0.0005, step: 0.0001 } }] },
      400,
      "skirts.0.gaps.to",
    ],
    ["a motor that the book has not", { motors: ["bell-18", "no-such"] }, 422, "motors.1"],
    ["a build that the book has not", { build: "no-such" }, 422, "build"],
    ["a margin below 1", { wants: { targetMargin: 0.5 } }, 400, "wants.targetMargin"],
    ["an unknown key", { colour: "red" }, 400, "colour"],
  ])("%s is refused, its field named", async (_what, change, status, path) => {
    const answer = await refused(change);
    expect(answer.status).toBe(status);
    expect(answer.fields.map((field: { path: string }) => field.path)).toContain(path);
  });

  it("a billion combinations are refused with the count and how to narrow it", async () => {
    const answer = await refused({
      rotors: [{ rotor: "swept-nine", diameters: { from: 0.02, to: 0.06, step: 0.000005 } }],
      skirts: [{ skirt: "square-lip", gaps: { from: 0.0001, to: 0.0021, step: 2.5e-7 } }],
      duties: Array.from({ length: 8 }, (_, i) => 0.3 + i / 10),
    });
    expect(answer).toMatchObject({ status: 422, code: "too-many-sets" });
    expect(answer.message).toMatch(/1,02\d,\d\d\d,\d\d\d combinations/);
    expect(answer.fields[0].message).toContain("Narrow");
  });

  it("unknown jobs are 404 on every path", async () => {
    const { api } = demoServer();
    for (const path of ["", "/sets", "/events"])
      expect((await api.get(`/api/v1/choose/none${path}`)).status).toBe(404);
  });
});

describe("docs/api.md, its example of a search", () => {
  it("is begun by a server that holds the demo, and done", async () => {
    const text = readFileSync(new URL("../../docs/api.md", import.meta.url), "utf8");
    const [, body] = /v1\/choose -H[^']*'Content-Type: application\/json' -d '([^']*)'/.exec(text) ?? [];
    const { api } = demoServer();
    const begun = await api.post("/api/v1/choose").send(JSON.parse(body ?? "{}"));
    expect(begun.status, begun.text).toBe(202);
    const { text: events } = await api.get(`/api/v1/choose/${begun.body.id}/events`);
    expect(events).toContain("event: done");
    expect(begun.body.sets).toBe(2 * 15 * 7);
  });
});
