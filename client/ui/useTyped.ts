import { useEffect, useRef, useState } from "preact/hooks";
import { asRead } from "../../shared/units/decimalMark.ts";
import { isGood, type NumberSpec, readNumber } from "../../shared/units/readNumber.ts";

export interface TypedAsked {
  readonly spec: NumberSpec;
  /** as it stands, SI */
  readonly value: number;
  /** how the field shows it, with a point */
  readonly shown: string;
  /** takes effect with each keystroke that can be read, SI */
  readonly onValue: (si: number) => void;
}

export interface Typed {
  /** what the field shows: as typed, else the value */
  readonly text: string;
  /** what is wrong with it; null where nothing is */
  readonly problem: string | null;
  readonly onText: (text: string) => void;
  readonly onLeave: () => void;
  /** what was typed no longer counts: the value was moved otherwise */
  readonly drop: () => void;
}

/** As far apart as two ways of typing one value may come to lie, relative. */
const SAME = 1e-9;

/** A setting's number while it is typed: the text stays as typed until the field is left or the value moves otherwise; what can't be read stays, with its message. */
export function useTyped({ spec, value, shown, onValue }: TypedAsked): Typed {
  const [draft, setDraft] = useState<string | null>(null);
  const own = useRef<number | null>(null);
  const reading = draft === null ? null : readNumber(spec, draft);
  const problem = reading && !isGood(reading) ? reading.message : null;
  useEffect(() => {
    const isOwn =
      own.current !== null && Math.abs(own.current - value) <= SAME * Math.max(1e-3, Math.abs(value));
    if (!isOwn) setDraft(null);
  }, [value]);
  return {
    text: draft ?? asRead(shown),
    problem,
    onText: (text) => {
      const typed = readNumber(spec, text);
      setDraft(text);
      own.current = isGood(typed) ? typed.value : null;
      if (isGood(typed)) onValue(typed.value);
    },
    onLeave: () => {
      if (problem === null) setDraft(null);
    },
    drop: () => setDraft(null),
  };
}
