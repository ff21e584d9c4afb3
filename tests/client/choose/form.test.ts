import { describe, expect, it } from "vitest";
import { combinationsIn, countSentence, tooManyText } from "#client/views/choose/form/count.ts";
import { draftOf, toggled, toggledAttitude, withText } from "#client/views/choose/form/draft.ts";
import { TARGET, WANT_FIELDS } from "#client/views/choose/form/fields.ts";
import { readForm } from "#client/views/choose/form/readForm.ts";
import { fieldKey, refusalsByField } from "#client/views/choose/form/refusals.ts";
import { unusable } from "#client/views/choose/form/usable.ts";
import { chooseProblem } from "#shared/book/choose/problem.ts";
import { countCombinations } from "#shared/decide/choose/count.ts";
import { chooseRequest } from "#shared/model/api/choose.ts";
import { readNumber } from "#shared/units/readNumber.ts";
import { chooseBody } from "#tests/support/chooseQuestion.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { demoDraft } from "./examples.ts";

const book = demoBook();

function typed(texts: Readonly<Record<string, string>>) {
  return Object.entries(texts).reduce((draft, [key, text]) => withText(draft, key, text), demoDraft());
}

const SWEPT = { "rotors.swept-nine.from": "36", "rotors.swept-nine.to": "50", "rotors.swept-nine.step": "1" };

describe("readForm, the form as it first stands", () => {
  it("tries what can be solved with, the build's own skirt and propellers without one, and can be asked at once", () => {
    const { request, problems } = readForm(book, demoDraft());
    expect([...problems]).toEqual([]);
    expect(request?.motors).toHaveLength(4);
    expect(request?.rotors.map(({ rotor }) => rotor)).toContain("pusher-three");
    expect(request?.skirts).toEqual([{ skirt: "square-lip", gaps: undefined }, { skirt: null }]);
    expect(chooseRequest.safeParse(JSON.parse(JSON.stringify(request))).success).toBe(true);
  });

  it("counts as the server does, with ranges, own sizes and two throttles", () => {
    const draft = typed({
      ...SWEPT,
      "skirts.square-lip.from": "0.3 mm",
      "skirts.square-lip.to": "0.9",
      "skirts.square-lip.step": "0,05",
      duties: "100 %, 80 %",
    });
    const { request, counts } = readForm(book, draft);
    if (!request) throw new Error("The form can be read.");
    const { problem } = chooseProblem(book, chooseRequest.parse(JSON.parse(JSON.stringify(request))));
    expect(combinationsIn(counts)).toBe(countCombinations(problem));
    expect(countSentence(counts)).toBe(
      "4 motors × 3 packs × 2 throttles × (20 rotor sizes × 13 skirts and gaps + 2 propeller sizes × 2 skirts or none) = 6336 combinations",
    );
  });

  it("is the one that a job was asked with, when it is made from the job's request and read again", () => {
    const wants = {
      targetMargin: 1.4,
      leastTime: 240,
      leastKeptTime: 330,
      mostWinding: 383.15,
      leastChance: 0.95,
      mostHeight: 0.04,
    };
    const asked = chooseBody({ wants });
    const { request } = readForm(book, draftOf(asked));
    const parsed = chooseRequest.parse(JSON.parse(JSON.stringify(request)));
    const [swept, straight] = parsed.rotors;
    expect(swept.diameters?.from).toBeCloseToRelative(0.036, 1e-9);
    expect(swept.diameters?.step).toBeCloseToRelative(0.001, 1e-9);
    expect(straight.diameters).toBeUndefined();
    expect(parsed.wants.mostWinding).toBeCloseToRelative(383.15, 1e-9);
    expect(parsed.wants.leastTime).toBeCloseToRelative(240, 1e-9);
    expect(parsed.wants.leastKeptTime).toBeCloseToRelative(330, 1e-9);
    expect({ ...parsed, rotors: [], skirts: [], wants: [] }).toEqual({
      ...asked,
      rotors: [],
      skirts: [],
      wants: [],
    });
    expect(parsed.wants.attitudes).toEqual(asked.wants.attitudes);
  });
});

describe("readForm, nonsense", () => {
  it.each([
    [
      "no number",
      "wants.mostWinding",
      "hot",
      /Read "hot"; allowed: −23.1.°C to 427.°C, for example "110 °C"/,
    ],
    ["a margin below 1", "wants.targetMargin", "0.2", /Read "0.2"; allowed: 1.× to 20.×/],
    ["no margin", "wants.targetMargin", " ", /Nothing was typed/],
    ["a chance above 100 %", "wants.leastChance", "120", /allowed: 0.% to 100.%/],
    ["minutes below 0", "wants.leastTime", "-3", /Read "-3"; allowed: 0.min to 16.667.min/],
    ["a word among the throttles", "duties", "100, banana", /Read "banana"/],
    ["a throttle of 0", "duties", "0", /allowed: 1.% to 100.%/],
    ["no throttle", "duties", ",", /Read ","/],
    ["a price without end", "wants.mostPrice", "1e300", /Read "1e300"/],
    ["a number that reads two ways", "wants.leastTime", "1,200", /two ways or in none/],
  ])("%s is told beside its field and asks nothing", (_what, key, text, message) => {
    const { request, problems } = readForm(book, typed({ [key]: text }));
    expect(request).toBeNull();
    expect(problems.get(key)).toMatch(message);
    expect(problems.size).toBe(1);
  });

  it.each([
    ["an end before its start", { from: "50", to: "36", step: "1" }, "to", /below its start/],
    ["a step of 0", { from: "36", to: "50", step: "0" }, "step", /A step above 0/],
    ["no step", { from: "36", to: "50" }, "step", /A step above 0/],
    ["no start", { to: "50", step: "1" }, "from", /no start/],
    ["a step that is too fine", { from: "36", to: "50", step: "0.001" }, "step", /too fine.*10000/],
  ])(
    "a range with %s is told beside it, and the combinations aren't counted",
    (_what, range, end, message) => {
      const texts = Object.entries(range).map(([key, text]) => [`rotors.swept-nine.${key}`, text]);
      const { problems, counts } = readForm(book, typed(Object.fromEntries(texts)));
      expect(problems.get(`rotors.swept-nine.${end}`)).toMatch(message);
      expect(combinationsIn(counts)).toBeNull();
      expect(countSentence(counts)).toBe("Not counted yet: the rotor sizes can't be read");
    },
  );

  it("a rotor in a duct with no skirt asks for one; a propeller alone does without", () => {
    const bare = toggled(demoDraft(), "skirts", "square-lip");
    expect(readForm(book, bare).problems.get("skirts")).toMatch(/pulls through one/);
    const ducted = bare.ticked.rotors.filter((id) => id !== "pusher-three");
    const alone = ducted.reduce((draft, id) => toggled(draft, "rotors", id), bare);
    const { request, problems, counts } = readForm(book, alone);
    expect([...problems]).toEqual([]);
    expect(request?.skirts).toEqual([{ skirt: null }]);
    expect(countSentence(counts)).toBe(
      "4 motors × 2 propeller sizes × 3 packs × 1 skirt or none = 24 combinations",
    );
  });

  it("empty lists of parts to try are named one by one, and an attitude is asked for", () => {
    const nothing = ["bell-18", "bell-22", "brushed-20", "coreless-12"].reduce(
      (draft, id) => toggled(draft, "motors", id),
      demoDraft(),
    );
    const { problems, counts } = readForm(
      book,
      toggledAttitude(toggled(nothing, "skirts", "square-lip"), { angle: "worst", mode: "driving" }),
    );
    expect([...problems.keys()].sort()).toEqual(["motors", "skirts", "wants.attitudes"]);
    expect(combinationsIn(counts)).toBe(0);
  });
});

describe("tooManyText, a billion combinations", () => {
  it("names the longest list before anything is asked; a million combinations say nothing", () => {
    const none = { propellers: 0, stands: 50 };
    const counts = { motors: 100, rotors: 4000, packs: 50, skirts: 50, duties: 1, ...none };
    expect(tooManyText(counts)).toMatch(
      /At most 5\u202f000\u202f000 combinations.*narrow the rotor sizes first/,
    );
    expect(tooManyText({ ...counts, rotors: 4 })).toBeNull();
  });
});

describe("WANT_FIELDS, as they are read", () => {
  it.each([
    ["38", 0.038],
    ["38 mm", 0.038],
    ["3.8 cm", 0.038],
    ["1.5 in", 0.0381],
    ["0,038 m", 0.038],
  ])("the height, typed as %s, with or without a unit, is %s m", (text, metres) => {
    const height = WANT_FIELDS.find(({ want }) => want === "mostHeight");
    if (!height) throw new Error("There is a field for the height.");
    expect(readNumber(height, text)).toMatchObject({ value: expect.closeTo(metres, 12) });
  });

  it("the margin, typed with its sign, is the bare number", () => {
    expect(readNumber(TARGET, "1.5 ×")).toMatchObject({ value: 1.5 });
  });
});

describe("fieldKey, a path that the server refuses", () => {
  const request = chooseBody();
  it.each([
    ["rotors.0.diameters.step", "rotors.swept-nine.step"],
    ["rotors.1", "rotors.straight-seven"],
    ["rotors.0.diameters", "rotors.swept-nine"],
    ["skirts.0.gaps.to", "skirts.square-lip.to"],
    ["motors.1", "motors.brushed-20"],
    ["motors", "motors"],
    ["duties.3", "duties"],
    ["wants.targetMargin", "wants.targetMargin"],
    ["wants.attitudes.0.angle", "wants.attitudes"],
    ["build", "build"],
  ])("%s stands beside the field %s", (path, key) => {
    expect(fieldKey(path, request)).toBe(key);
  });

  it("a refusal without fields is one of the whole", () => {
    expect([...refusalsByField([], "8 choosings are under way already.", request)]).toEqual([
      ["", "8 choosings are under way already."],
    ]);
  });
});

describe("unusable, a part that can't be solved with", () => {
  it("says what it lacks: a mass, a curve, a thrust test; a whole one lacks nothing", () => {
    const { mass: _unweighed, ...light } = book.motors[0].data;
    const lacking = {
      ...book,
      motors: [{ ...book.motors[0], data: light }],
      tests: book.tests.filter(({ data }) => data.kind !== "curve"),
      rotors: book.rotors.map((rotor) => ({ ...rotor, data: { ...rotor.data, geometry: undefined } })),
    };
    expect(unusable(lacking, "motors", lacking.motors[0].id)?.remedy).toBe("weigh it");
    expect(unusable(book, "rotors", "pusher-three")).toBeNull();
    const untested = { ...book, tests: book.tests.filter(({ data }) => data.kind !== "thrust") };
    expect(unusable(untested, "rotors", "pusher-three")?.test).toBe("thrust");
    expect(unusable(lacking, "rotors", "swept-nine")?.test).toBe("curve");
    expect(unusable(book, "motors", "bell-18")).toBeNull();
    expect(unusable(book, "rotors", "swept-nine")).toBeNull();
  });
});
