import { solve } from "#client/state/outcome.ts";
import { replyTo } from "#client/state/uncertainty/answer.ts";
import { uncertaintyState } from "#client/state/useUncertainty.ts";
import { foundIn } from "#client/state/verdict/found.ts";
import { letterAt } from "#client/views/compare/letterAt.ts";
import type { Column } from "#client/views/compare/useColumn.ts";
import { headroomOf } from "#client/views/mass/headroom.ts";
import { answerTo } from "#client/views/rundown/answer.ts";
import { fromFull, questionOf } from "#client/views/rundown/question.ts";
import type { Book } from "#shared/book/book.ts";
import { limitsInput } from "#shared/book/limitsInput.ts";
import { partsPrice } from "#shared/book/partsPrice.ts";
import { uncertaintyAsked } from "#shared/book/uncertaintyAsked.ts";
import { limitsOf } from "#shared/decide/limits/limits.ts";
import { timedVerdict } from "#shared/decide/verdict/concluded.ts";
import { chanceOf } from "#shared/decide/verdict/judge.ts";
import type { Build } from "#shared/model/build.ts";

/** A build's column of Compare as its threads would work it out, `samples` in place of the usual number. */
export function comparedColumn(book: Book, build: Build, place: number, samples = 64): Column {
  const outcome = solve(book, build);
  const asked = uncertaintyAsked(book, outcome);
  const reply = asked && replyTo({ ...asked, asked: { ...asked.asked, samples } });
  const sure = uncertaintyState(asked, reply, false);
  const found = foundIn(book, outcome);
  const of = found && "answered" in found ? found.answered : null;
  const question = questionOf(book, outcome, fromFull(outcome.build));
  const limited = question && limitsInput(book, outcome.build, question.input);
  return {
    key: build.name,
    letter: letterAt(place),
    name: build.name,
    build,
    stored: null,
    outcome,
    sure,
    verdict: of && timedVerdict(of.of, { ...of.findings, chance: chanceOf(sure.doubt, of.of.attitudes) }),
    run: question && answerTo(question),
    limits: limited && limitsOf(limited),
    limitsInput: limited,
    headroom: headroomOf(book, build),
    price: partsPrice(book, build),
    problems: [],
    isRunning: false,
  };
}
