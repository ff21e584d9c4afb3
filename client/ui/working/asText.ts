import { type Board, originBehind, type Working, workingBehind } from "../../../shared/physics/working.ts";
import { asRead } from "../../../shared/units/decimalMark.ts";
import { resultText, shownInWorking } from "./workingText.ts";

/** How deep a chain of workings is written; none of ours is longer. */
const DEEPEST = 8;

function lines(working: Working, board: Board, depth: number): string[] {
  const { title, equation, values, result, source, assumptions } = working;
  const pad = "  ".repeat(depth);
  const own = [
    `${title}: ${result.symbol} = ${resultText(working)}`,
    `  ${asRead(equation)}`,
    ...assumptions.map((each) => `  Taken for granted: ${each}`),
    `  Source: ${source}`,
  ].map((line) => pad + line);
  const inputs = values.flatMap((value) => {
    const shown = `${pad}  ${value.symbol} = ${shownInWorking(value)}, ${value.meaning}`;
    const behind = depth < DEEPEST ? workingBehind(value, board.workings) : null;
    const origin = behind ? null : originBehind(value, board.origins);
    const tests = origin && origin.tests.length > 0 ? ` Tests: ${origin.tests.join(", ")}.` : "";
    const more = behind && behind !== working ? lines(behind, board, depth + 2) : [];
    return [origin ? `${shown}. ${origin.what}${tests}` : shown, ...more];
  });
  return [...own, ...inputs];
}

/** @returns a working and all that it leads down to, in plain text */
export function asText(working: Working, board: Board): string {
  return `${lines(working, board, 0).join("\n")}\n`;
}
