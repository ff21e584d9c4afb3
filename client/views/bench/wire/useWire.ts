import { useEffect, useRef, useState } from "preact/hooks";
import { type OpenPort, openPort } from "./port.ts";
import { LineSplitter, type Readings, readSerialLine } from "./serialLine.ts";
import { Watched } from "./watch.ts";

/** What an instrument says. */
export interface Wire {
  /** the last of each name */
  readonly values: Readings;
  readonly watched: ReadonlyMap<string, Watched>;
  readonly lines: number;
  /** lines that hold no reading, and the last of them */
  readonly unread: number;
  readonly lastUnread: string;
}

const NOTHING: Wire = { values: new Map(), watched: new Map(), lines: 0, unread: 0, lastUnread: "" };

function withLine(wire: Wire, line: string, time: number): Wire {
  if (line.trim() === "") return wire;
  const readings = readSerialLine(line);
  if (!readings) return { ...wire, lines: wire.lines + 1, unread: wire.unread + 1, lastUnread: line };
  const watched = new Map(wire.watched);
  for (const [name, value] of readings) {
    const each = watched.get(name) ?? new Watched();
    each.push({ time, value });
    watched.set(name, each);
  }
  return { ...wire, values: new Map([...wire.values, ...readings]), watched, lines: wire.lines + 1 };
}

/** Reads an instrument; `onReadings` is told each line that holds readings. */
export function useWire(onReadings: (readings: Readings, wire: Wire) => void) {
  const [wire, setWire] = useState(NOTHING);
  const [port, setPort] = useState<OpenPort | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const now = useRef(NOTHING);
  const told = useRef(onReadings);
  told.current = onReadings;
  useEffect(() => () => port?.close(), [port]);
  const connect = async (baudRate: number) => {
    const splitter = new LineSplitter();
    now.current = NOTHING;
    setWire(NOTHING);
    setProblem(null);
    const onText = (text: string) => {
      for (const line of splitter.push(text)) {
        const before = now.current;
        now.current = withLine(before, line, performance.now() / 1000);
        const readings = now.current.unread === before.unread ? readSerialLine(line) : null;
        if (readings) told.current(readings, now.current);
      }
      setWire(now.current);
    };
    const onEnd = (why: string | null) => {
      setPort(null);
      setProblem(why);
    };
    setPort(await openPort(baudRate, { onText, onEnd }));
  };
  return { wire, problem, isOpen: port !== null, connect, close: () => port?.close() };
}
