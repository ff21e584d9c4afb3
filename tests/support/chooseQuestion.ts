import { chooseProblem, type Question } from "#shared/book/choose/problem.ts";
import { type ChooseRequest, chooseRequest } from "#shared/model/api/choose.ts";
import { demoBook } from "./demoBook.ts";

/** @returns what is asked of the demo: two motors, two families, a pack, two skirts */
export function chooseBody(change: object = {}): ChooseRequest {
  return chooseRequest.parse({
    build: "pane-crawler",
    motors: ["bell-18", "brushed-20"],
    rotors: [
      { rotor: "swept-nine", diameters: { from: 0.036, to: 0.05, step: 0.001 } },
      { rotor: "straight-seven" },
    ],
    packs: ["two-cell-450"],
    skirts: [
      { skirt: "square-lip", gaps: { from: 0.0003, to: 0.0009, step: 0.00005 } },
      { skirt: "felt-ring" },
    ],
    duties: [1, 0.8],
    ...change,
  });
}

/** @returns that question in the engine's numbers */
export function chooseQuestion(change: object = {}): { request: ChooseRequest; question: Question } {
  const request = chooseBody(change);
  return { request, question: chooseProblem(demoBook(), request) };
}
