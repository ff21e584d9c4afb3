/** As much of a serial port as is used (Web Serial API, W3C community draft). */
interface SerialPort {
  readonly readable: ReadableStream<Uint8Array> | null;
  readonly open: (options: { readonly baudRate: number }) => Promise<void>;
  readonly close: () => Promise<void>;
}

interface Serial {
  readonly requestPort: () => Promise<SerialPort>;
}

const serial = (): Serial | undefined => (navigator as { readonly serial?: Serial }).serial;

/** Why no port can be read here; null where one can. */
export function whyNoPort(): string | null {
  if (serial()) return null;
  return "This browser reads no serial port: Chromium and its kin do, on this machine's own address or over https. Log to a file instead, and import it as CSV.";
}

/** A port that is being read. */
export interface OpenPort {
  readonly close: () => void;
}

interface PortUser {
  readonly onText: (text: string) => void;
  /** the port is closed, by whom or what it may be; why, unless it was asked for */
  readonly onEnd: (problem: string | null) => void;
}

async function readAll(port: SerialPort, stopped: AbortSignal, { onText, onEnd }: PortUser): Promise<void> {
  const decoder = new TextDecoder();
  const reader = port.readable?.getReader();
  const cancel = () => void reader?.cancel();
  stopped.addEventListener("abort", cancel);
  try {
    for (;;) {
      const step = await reader?.read();
      if (!step || step.done) break;
      onText(decoder.decode(step.value, { stream: true }));
    }
    onEnd(stopped.aborted ? null : "The instrument said no more: is it still plugged in?");
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    onEnd(`The instrument was lost: ${error.message} Plug it in and connect again.`);
  } finally {
    stopped.removeEventListener("abort", cancel);
    reader?.releaseLock();
    await port.close();
  }
}

/** Lets the user choose a port and reads it; null where none was chosen. */
export async function openPort(baudRate: number, user: PortUser): Promise<OpenPort | null> {
  try {
    const port = await serial()?.requestPort();
    if (!port) return null;
    await port.open({ baudRate });
    const stopped = new AbortController();
    void readAll(port, stopped.signal, user);
    return { close: () => stopped.abort() };
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    // nothing was chosen
    if (error.name === "NotFoundError") return null;
    user.onEnd(`The port can't be opened: ${error.message} Does another program hold it?`);
    return null;
  }
}
