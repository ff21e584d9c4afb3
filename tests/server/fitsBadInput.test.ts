import fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import "#tests/support/sameCases.ts";
import {
  leakFitResponse,
  motorFitResponse,
  propellerFitResponse,
  pullFitResponse,
  rotorFitResponse,
} from "#shared/model/api/fits.ts";
import { frictionFitResponse } from "#shared/model/api/frictionFit.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { freshBook } from "./support/api.ts";

let api: ReturnType<typeof freshBook>["api"];
beforeEach(() => {
  ({ api } = freshBook());
});

const repeated = <T>(row: T, count = 4): T[] => Array.from({ length: count }, () => row);

const RESPONSES = {
  rotor: rotorFitResponse,
  motor: motorFitResponse,
  leak: leakFitResponse,
  pull: pullFitResponse,
  propeller: propellerFitResponse,
  friction: frictionFitResponse,
} as const;
type Fit = keyof typeof RESPONSES;

/** Either numbers throughout in the documented shape, or a refusal that names a field and says what to do. */
async function ask(fit: Fit, body: object) {
  const { status, body: answer } = await api.post(`/api/v1/fit/${fit}`).send(body);
  expect([200, 400, 422], JSON.stringify(answer)).toContain(status);
  if (status === 200) {
    expect(RESPONSES[fit].parse(answer)).toEqual(answer);
    expectAllFinite(answer);
  } else {
    expect(answer.error.fields.length, JSON.stringify(answer)).toBeGreaterThan(0);
    for (const { path, message } of answer.error.fields) {
      expect(path).not.toBe("");
      expect(message.length).toBeGreaterThan(5);
    }
    expect(JSON.stringify(answer)).not.toMatch(/NaN|Infinity|undefined/);
  }
  return { status, answer };
}

const reading = { rpm: 24_000, flow: 3e-4, pressure: 400 };
const blocked = { rpm: 24_000, flow: 0, pressure: 900 };
const rotor = (points: readonly object[]) => ({ diameter: 0.042, points });
const row = { voltage: 8, current: 4, rpm: 40_000 };
const propeller = (rows: readonly object[]) => ({ diameter: 0.127, rows });

type Case = readonly [what: string, fit: Fit, body: object, status: number, field: string, next?: RegExp];

/** What comes back, and for a 422 what it says to measure next. */
const REFUSED: readonly Case[] = [
  ["one point", "rotor", rotor([reading]), 422, "points", /[Tt]ake|[Mm]easure|[Aa]dd/],
  ["all points at one flow", "rotor", rotor(repeated(reading)), 422, "points", /[Tt]ake|[Mm]easure|[Aa]dd/],
  ["all points blocked", "rotor", rotor(repeated(blocked)), 422, "points", /[Tt]ake|[Mm]easure|[Aa]dd/],
  [
    "fewer flows than the degree needs",
    "rotor",
    { ...rotor([blocked, reading]), degree: 4 },
    422,
    "points",
    /[Tt]ake/,
  ],
  ["rpm 0", "rotor", rotor([{ ...reading, rpm: 0 }]), 400, "points.0.rpm"],
  ["a negative flow", "rotor", rotor([{ ...reading, flow: -1e-4 }]), 400, "points.0.flow"],
  [
    "no pressure at any flow",
    "rotor",
    rotor([0, 1e-4, 2e-4].map((flow) => ({ ...reading, flow, pressure: 0 }))),
    422,
    "points",
    /[Cc]heck|[Tt]ake|[Mm]easure/,
  ],
  ["no point", "rotor", rotor([]), 400, "points"],
  ["one row", "motor", { rows: [row] }, 422, "rows", /ohmmeter|loads|no-load/],
  ["repeated rows", "motor", { rows: repeated(row) }, 422, "rows", /ohmmeter|loads|no-load/],
  ["rpm 0 in every row", "motor", { rows: repeated({ ...row, rpm: 0 }) }, 422, "rows", /speed|turning/],
  [
    "current 0 in every row",
    "motor",
    { rows: repeated({ ...row, current: 0 }) },
    422,
    "rows",
    /ohmmeter|loads/,
  ],
  ["voltage 0 in every row", "motor", { rows: repeated({ ...row, voltage: 0 }) }, 422, "rows", /./],
  ["a negative current", "motor", { rows: [{ ...row, current: -1 }] }, 400, "rows.0.current"],
  [
    "a resistance that takes the whole voltage",
    "motor",
    { rows: [row], resistance: 5 },
    422,
    "resistance",
    /ohmmeter/,
  ],
  ["one point", "leak", { points: [{ pressure: 200, flow: 3e-4 }] }, 422, "points", /[Mm]easure/],
  [
    "all points at one pressure",
    "leak",
    { points: repeated({ pressure: 200, flow: 3e-4 }) },
    422,
    "points",
    /[Mm]easure/,
  ],
  [
    "negative pressures",
    "leak",
    { points: [100, 200, 400].map((p) => ({ pressure: -p, flow: 3e-4 })) },
    422,
    "points",
    /swap|[Mm]easure/,
  ],
  [
    "no flow",
    "leak",
    { points: [100, 200, 400].map((p) => ({ pressure: p, flow: 0 })) },
    422,
    "points",
    /[Mm]easure/,
  ],
  ["a pressure in words", "leak", { points: [{ pressure: "200 Pa", flow: 3e-4 }] }, 400, "points.0.pressure"],
  [
    "held above let go",
    "pull",
    {
      trials: [
        { held: 9, letGo: 8 },
        { held: 7, letGo: 8 },
      ],
    },
    422,
    "trials.0.held",
  ],
  ["one pull", "pull", { trials: [{ held: 7, letGo: 8 }] }, 422, "trials", /[Rr]epeat/],
  [
    "pulls that all held",
    "pull",
    { trials: repeated({ held: 7, letGo: null }) },
    422,
    "trials",
    /larger loads/,
  ],
  [
    "pulls that all let go at once",
    "pull",
    { trials: repeated({ held: 0, letGo: 4 }) },
    422,
    "trials",
    /smaller loads/,
  ],
  [
    "exact readings without scatter",
    "pull",
    { trials: repeated({ held: 7, letGo: 7 }) },
    422,
    "trials",
    /finer steps|two loads/,
  ],
  [
    "larger loads that hold better",
    "pull",
    {
      trials: [
        { held: 9, letGo: null },
        { held: 0, letGo: 5 },
        { held: 8, letGo: null },
        { held: 0, letGo: 6 },
      ],
    },
    422,
    "trials",
    /[Rr]epeat/,
  ],
  [
    "pulls that say nothing",
    "pull",
    { trials: repeated({ held: 0, letGo: null }) },
    422,
    "trials",
    /[Rr]epeat|[Pp]ull/,
  ],
  [
    "a log-normal let go at 0",
    "pull",
    { trials: repeated({ held: 0, letGo: 0 }), distribution: "lognormal" },
    422,
    "trials.0.letGo",
  ],
  ["a negative load", "pull", { trials: [{ held: -1, letGo: 3 }] }, 400, "trials.0.held"],
  ["rpm 0", "propeller", propeller([{ rpm: 0, thrust: 3 }]), 400, "rows.0.rpm"],
  [
    "a speed that is nothing in rad/s",
    "propeller",
    propeller([{ rpm: 5e-324, thrust: 3 }]),
    422,
    "rows",
    /too near 0/,
  ],
  ["no thrust", "propeller", propeller(repeated({ rpm: 12_000, thrust: 0 })), 422, "rows", /scale/],
  ["thrust backwards", "propeller", propeller(repeated({ rpm: 12_000, thrust: -2 })), 422, "rows", /sign/],
  ["no row", "propeller", propeller([]), 400, "rows"],
  [
    "nothing that slid",
    "friction",
    { slides: repeated({ held: 30, slid: null }) },
    422,
    "slides",
    /[Tt]ilt further/,
  ],
  [
    "all that slid at the first step",
    "friction",
    { slides: repeated({ held: 0, slid: 4 }) },
    422,
    "slides",
    /flatter/,
  ],
  ["held above slid", "friction", { slides: [{ held: 40, slid: 35 }] }, 400, "slides.0.held"],
  ["a tilt beyond upright", "friction", { slides: [{ held: 40, slid: 95 }] }, 400, "slides.0.slid"],
  [
    "slides that say nothing",
    "friction",
    { slides: repeated({ held: null, slid: null }) },
    422,
    "slides",
    /[Tt]ilt/,
  ],
];

const ANSWERED: readonly (readonly [what: string, fit: Fit, body: object])[] = [
  ["two points", "rotor", rotor([blocked, reading])],
  [
    "zero variance: points right on a line",
    "rotor",
    rotor([0, 1e-4, 2e-4, 3e-4].map((flow) => ({ rpm: 24_000, flow, pressure: 900 - 1e6 * flow }))),
  ],
  ["the same rows twice", "rotor", rotor([blocked, blocked, reading, reading])],
  [
    "a negative pressure among others",
    "rotor",
    rotor([blocked, reading, { ...reading, flow: 6e-4, pressure: -20 }]),
  ],
  [
    "rows without residual",
    "motor",
    { rows: [row, { voltage: 8, current: 0.3, rpm: 60_000, noLoad: true }] },
  ],
  [
    "a blocked row among others",
    "motor",
    {
      rows: [
        { voltage: 2, current: 6, rpm: 0 },
        row,
        { voltage: 8, current: 0.3, rpm: 47_400, noLoad: true },
      ],
    },
  ],
  ["current 0 with a given resistance", "motor", { rows: repeated({ ...row, current: 0 }), resistance: 0.3 }],
  ["two points", "leak", { points: [100, 400].map((p) => ({ pressure: p, flow: 1e-5 * p })) }],
  [
    "one negative pressure among others",
    "leak",
    { points: [-10, 100, 200, 400].map((p) => ({ pressure: p, flow: 2e-5 * Math.sqrt(Math.abs(p)) })) },
  ],
  ["a flow that doesn't rise", "leak", { points: [100, 200, 400].map((p) => ({ pressure: p, flow: 3e-4 })) }],
  [
    "two pulls that share a value",
    "pull",
    {
      trials: [
        { held: 6, letGo: 8 },
        { held: 7, letGo: 9 },
      ],
    },
  ],
  [
    "one that let go at once among others",
    "pull",
    {
      trials: [
        { held: 0, letGo: 4 },
        { held: 6, letGo: 8 },
        { held: 7, letGo: 9 },
      ],
    },
  ],
  ["repeated pulls", "pull", { trials: repeated({ held: 7, letGo: 8 }) }],
  ["one row", "propeller", propeller([{ rpm: 12_000, thrust: 3 }])],
  ["repeated rows", "propeller", propeller(repeated({ rpm: 12_000, thrust: 3, shaftPower: 40 }))],
  [
    "shaft power 0",
    "propeller",
    propeller([10_000, 12_000].map((rpm) => ({ rpm, thrust: 3, shaftPower: 0 }))),
  ],
  ["one slide", "friction", { slides: [{ held: 30, slid: 32 }] }],
  [
    "a run stopped early among others",
    "friction",
    {
      slides: [
        { held: 30, slid: 32 },
        { held: 33, slid: null },
        { held: 31, slid: 34 },
      ],
    },
  ],
  ["exact slides that agree", "friction", { slides: repeated({ held: null, slid: 30 }) }],
];

describe("POST /fit/*, on readings that can't settle it", () => {
  const cases = REFUSED.map(([what, fit, body, status, field, next]) => ({
    what,
    fit,
    body,
    status,
    field,
    next,
  }));
  it.each(cases)(
    "$what ($fit): refused, the field named, what to measure next said",
    async ({ fit, body, status, field, next }) => {
      const { status: found, answer } = await ask(fit, body);
      expect(found, JSON.stringify(answer)).toBe(status);
      expect(answer.error.fields[0].path).toBe(field);
      if (next) expect(JSON.stringify(answer.error)).toMatch(next);
    },
  );
});

describe("POST /fit/*, on poor readings that still say something", () => {
  it.each(ANSWERED)("%s (%s): an answer of finite numbers", async (_, fit, body) => {
    const { status, answer } = await ask(fit, body);
    expect(status, JSON.stringify(answer)).toBe(200);
  });
});

describe("POST /fit/friction", () => {
  // tan 30° = 1/√3; a bracket alone: the middle of its ends in μ.
  it("of one bracket: the middle of tan held and tan slid, half of it over √3 as its uncertainty", async () => {
    const { answer } = await ask("friction", { slides: [{ held: 30, slid: 45 }] });
    expect(answer.mu).toBeCloseToRelative((1 / Math.sqrt(3) + 1) / 2, 1e-12);
    expect(answer.uncertainty).toBeCloseToRelative((1 - 1 / Math.sqrt(3)) / 2 / Math.sqrt(3), 1e-12);
  });

  // d(tan θ)/dθ = 1 + μ²: at 45° a tilt good to 1° leaves 2·π/180.
  it("adds the tilt's own uncertainty, by the slope of the tangent", async () => {
    const { answer } = await ask("friction", {
      slides: repeated({ held: null, slid: 45 }),
      angleUncertainty: 1,
    });
    expect(answer.uncertainty).toBeCloseToRelative((2 * Math.PI) / 180, 1e-9);
  });
});

describe("POST /fit/*, on nonsense", () => {
  const number = fc.oneof(
    fc.constantFrom(0, -0, 1, -1, 1e-300, 1e5, 1e9, -1e9, 5e-324, 0.1, 7),
    fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }),
    fc.double({ noNaN: true, noDefaultInfinity: true, min: 0, max: 1e-3 }),
  );
  const positive = number.map(Math.abs);
  const small = fc.oneof(
    positive.filter((x) => x < 60),
    fc.integer({ min: 0, max: 60 }),
  );
  const many = <T>(each: fc.Arbitrary<T>) => fc.array(each, { minLength: 1, maxLength: 7 });
  const maybe = <T>(each: fc.Arbitrary<T>) => fc.option(each, { nil: undefined });
  const bodies: Readonly<Record<Fit, fc.Arbitrary<object>>> = {
    rotor: fc.record({
      diameter: fc.oneof(positive, fc.constant(0.04)),
      points: many(
        fc.record({
          rpm: fc.oneof(positive, fc.constant(2e4)),
          flow: fc.oneof(positive, fc.constantFrom(0, 1e-4, 2e-4, 3e-4)),
          pressure: number,
          density: maybe(positive),
          shaftPower: maybe(positive),
          weight: maybe(positive),
        }),
      ),
    }),
    motor: fc.record({
      rows: many(fc.record({ voltage: small, current: small, rpm: positive, noLoad: fc.boolean() })),
      resistance: maybe(positive),
    }),
    leak: fc.record({ points: many(fc.record({ pressure: number, flow: fc.oneof(number, small) })) }),
    pull: fc.record({
      trials: many(fc.record({ held: positive, letGo: fc.option(positive) })),
      distribution: fc.constantFrom("normal", "lognormal"),
    }),
    propeller: fc.record({
      diameter: fc.oneof(positive, fc.constant(0.1)),
      rows: many(
        fc.record({ rpm: positive, thrust: number, shaftPower: maybe(positive), density: maybe(positive) }),
      ),
    }),
    friction: fc.record({
      slides: many(fc.record({ held: fc.option(small), slid: fc.option(small) })),
      angleUncertainty: fc.constantFrom(0, 0.5),
    }),
  };

  it.each(Object.keys(RESPONSES) as Fit[])(
    "%s: never a failure inside, never a number that is none",
    async (fit) => {
      const pruned = bodies[fit].map((body) => JSON.parse(JSON.stringify(body)) as object);
      await fc.assert(
        fc.asyncProperty(pruned, async (body) => void (await ask(fit, body))),
        { numRuns: 150 },
      );
    },
  );

  it.each(Object.keys(RESPONSES) as Fit[])("%s: any JSON at all is answered or refused", async (fit) => {
    await fc.assert(
      fc.asyncProperty(fc.dictionary(fc.string(), fc.jsonValue()), async (body) => {
        const { status } = await api.post(`/api/v1/fit/${fit}`).send(body as object);
        expect([400, 422]).toContain(status);
      }),
      { numRuns: 40 },
    );
  });
});
