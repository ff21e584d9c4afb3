import { useMemo } from "preact/hooks";
import { testsLeftOut } from "../../shared/book/leftOut/leftOut.ts";
import { marksOf } from "../../shared/book/marks.ts";
import type { Book, Resolved } from "../../shared/book/resolve.ts";
import { calibrationNotes } from "../../shared/book/verdictCase.ts";
import type { TestKind } from "../../shared/model/tests/index.ts";
import { asProblem } from "../../shared/numeric/errors.ts";
import { href } from "../app/router.ts";
import type { Outcome } from "../state/outcome.ts";
import { counted } from "./count.ts";
import { calibratedFrictionWords, gapWords, pullFactorWords } from "./gapWords.ts";
import { KIND_WORDS } from "./kindWords.ts";
import { LeftOutTests } from "./LeftOutTests.tsx";
import { Mark } from "./Mark.tsx";
import { separatelyWords } from "./roughnessWords.ts";
import { stiffnessWords } from "./stiffnessWords.ts";
import { RoughnessFigure } from "./working/RoughnessFigure.tsx";

function countsByKind(book: Book, ids: readonly string[]): string[] {
  const used = new Set(ids);
  const counts = new Map<TestKind, number>();
  for (const test of book.tests)
    if (used.has(test.id)) counts.set(test.data.kind, (counts.get(test.data.kind) ?? 0) + 1);
  return [...counts].map(([kind, n]) => counted(n, KIND_WORDS[kind]));
}

/** The leak measured at that very gap needs no gap; what the gap itself rests on is said all the same. */
function gapLine(resolved: Resolved): string {
  const gap = `Gap ${gapWords(resolved)}`;
  return resolved.leak ? `${gap}; the leak was measured there and stands in its place.` : `${gap}.`;
}

/** How rough the surface is, where tests and not its record say it. */
function RoughnessLine({ book, outcome: { build, resolved } }: { book: Book; outcome: Outcome }) {
  const surface = book.surfaces.find(({ id }) => id === build.surface)?.data;
  const roughness = resolved?.roughness;
  if (!surface || roughness?.basis !== "measured separately") return null;
  return (
    <li>
      Roughness of {surface.name} <RoughnessFigure roughness={roughness} />,{" "}
      {separatelyWords(roughness, surface.roughness)}.
    </li>
  );
}

/** Settings change none of what decides which tests are left out. */
function useLeftOut(book: Book, { build }: Outcome) {
  const { rotor, motor, pack, skirt, surface, gear, uncertainty } = build;
  return useMemo(
    () => asProblem(() => testsLeftOut(book, { rotor, motor, pack, skirt, surface, gear, uncertainty })),
    [book, rotor, motor, pack, skirt, surface, gear, uncertainty],
  );
}

/** What is scaled, stated or estimated in the figures, how the gap and the like are known, and which tests are left out. */
export function Basis({ book, outcome }: { book: Book; outcome: Outcome }) {
  const { resolved } = outcome;
  const leftOut = useLeftOut(book, outcome);
  if (!resolved) return <LeftOutTests tests={leftOut} />;
  const friction = calibratedFrictionWords(resolved);
  const stiffness = stiffnessWords(resolved.stiffness);
  return (
    <>
      <ul class="rests">
        {!resolved.thrust && <li>{gapLine(resolved)}</li>}
        {!resolved.thrust && <li>Pull factor {pullFactorWords(resolved)}.</li>}
        <RoughnessLine book={book} outcome={outcome} />
        {!resolved.thrust && stiffness && <li>Running gear {stiffness}.</li>}
        {friction && <li>Friction of the wheels {friction}.</li>}
        {calibrationNotes(resolved, "prior-doubted").map(({ message }) => (
          <li key={message}>{message}</li>
        ))}
        {marksOf(book, outcome).map(({ word, what }) => (
          <li key={word + what}>
            <Mark word={word} /> {what}
          </li>
        ))}
      </ul>
      <LeftOutTests tests={leftOut} />
    </>
  );
}

/** On how many tests the figures rest, and what is scaled, stated or estimated in them. */
export function RestsOn({ book, outcome }: { book: Book; outcome: Outcome }) {
  const counts = countsByKind(book, outcome.resolved?.tests ?? []);
  const none = "No test yet: every figure is stated or estimated.";
  return (
    <>
      {outcome.resolved && (
        <>
          <h2>Based on</h2>
          <p>{counts.length > 0 ? <a href={href("bench")}>{counts.join(", ")}</a> : none}</p>
        </>
      )}
      <Basis book={book} outcome={outcome} />
    </>
  );
}
