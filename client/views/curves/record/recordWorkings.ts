import type { TrackRecord } from "../../../../shared/model/api/record.ts";
import { type Board, type Row, type Working, workedOut } from "../../../../shared/physics/working.ts";
import { FIGURE, insideOf } from "./recordWords.ts";

const DOC = "docs/method/record.md";
const BAND = [
  "Inside: what was measured reaches into the 5 to 95 % that were predicted for one reading, its scatter included.",
];

const inside = (title: string, count: number, within: number, share: number): Working =>
  workedOut(
    {
      title,
      equation: "S = k/n",
      output: ["S", ""],
      source: `readings inside their band, counted; ${DOC}`,
      assumptions: BAND,
    },
    [
      [["k", "readings inside the band", ""], within],
      [["n", `readings held against one: ${title}`, ""], count],
    ],
    share,
  );

const median = (title: string, count: number, value: number): Working =>
  workedOut(
    {
      title,
      equation: "b = median(measured/predicted) − 1",
      output: ["b", ""],
      source: `${DOC}`,
      assumptions: [
        "Of readings that were measured from both sides, the middle of the bracket against the predicted median.",
      ],
    },
    [[["n", `readings in all: ${title}`, ""], count] satisfies Row],
    value,
  );

/** @returns how the shares and the medians of the record came about, down to the tests */
export function recordBoard(record: TrackRecord): Board {
  const { summary, entries } = record;
  const all = insideOf(record);
  const own = summary.flatMap(({ figure, count, inside: share, bias }) => [
    ...(share === null
      ? []
      : [inside(`${FIGURE[figure]} within 5 to 95 %`, count, Math.round(share * count), share)]),
    ...(bias === null ? [] : [median(`${FIGURE[figure]} off in the median`, count, bias)]),
  ]);
  const whole =
    all.count === 0
      ? []
      : [inside("readings within 5 to 95 %", all.count, all.inside, all.inside / all.count)];
  const tests = (of: (figure: string) => boolean) => [
    ...new Set(entries.filter(({ figure }) => of(figure)).map(({ test }) => test)),
  ];
  const what = "Readings of these tests, each beside the prediction that was kept with it.";
  const origins = summary.map(({ figure, count }) => ({
    symbol: "n",
    value: count,
    what,
    tests: tests((each) => each === figure),
  }));
  return {
    workings: [...whole, ...own],
    origins: [...origins, { symbol: "n", value: all.count, what, tests: tests((each) => each !== "margin") }],
  };
}
