import type { Request, Response } from "express";

const HEADERS = {
  "Content-Type": "text/event-stream; charset=utf-8",
  "Cache-Control": "no-cache, no-transform",
  "X-Accel-Buffering": "no",
} as const;

/** An open stream of server-sent events. */
export interface EventStream {
  send(event: string, data: object): void;
  /** one line that a reader passes over: keeps the connection alive, or says when to come again */
  write(line: string): void;
  end(): void;
  /** the reader has gone, or the stream has ended */
  onClose(listener: () => void): void;
}

/** Opens a stream of events. @returns null where headers alone were asked for: those are sent, and nothing follows */
export function openStream(request: Request, response: Response): EventStream | null {
  response.status(200).set(HEADERS);
  if (request.method === "HEAD") {
    response.end();
    return null;
  }
  return {
    send: (event, data) => response.write(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`),
    write: (line) => response.write(`${line}\n\n`),
    end: () => response.end(),
    onClose: (listener) => response.on("close", listener),
  };
}
