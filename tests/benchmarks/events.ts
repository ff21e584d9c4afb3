import type { ChooseJob } from "#shared/model/api/choose.ts";

/** One event of a search's stream, and when it arrived. */
export interface Heard {
  readonly event: string;
  readonly job: ChooseJob;
  /** [s] */
  readonly at: number;
}

const MILLISECONDS = 1000;
const EVENT = /^event: (\w+)\ndata: (.*)$/s;

function heard(block: string): Heard {
  const parts = EVENT.exec(block);
  if (!parts) throw new Error(`The stream said ${JSON.stringify(block.slice(0, 80))}.`);
  return { event: parts[1], job: JSON.parse(parts[2]) as ChooseJob, at: performance.now() / MILLISECONDS };
}

/** Follows a search until its stream ends; `each` is called as an event arrives. */
export async function follow(
  address: string,
  id: string,
  each: (event: Heard) => void = () => {},
): Promise<Heard[]> {
  const { body, ok } = await fetch(`${address}/api/v1/choose/${id}/events`);
  if (!body || !ok) throw new Error(`There is no stream of the choosing ${id}.`);
  const events: Heard[] = [];
  let rest = "";
  for await (const chunk of body.pipeThrough(new TextDecoderStream())) {
    const blocks = (rest + chunk).split("\n\n");
    rest = blocks.pop() ?? "";
    for (const block of blocks) {
      const event = heard(block);
      events.push(event);
      each(event);
    }
  }
  return events;
}

/** @returns the job's id @throws {Error} where the server refuses */
export async function begin(address: string, body: object): Promise<string> {
  const response = await fetch(`${address}/api/v1/choose`, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(body),
  });
  if (response.status !== 202) throw new Error(`${response.status}: ${await response.text()}`);
  return ((await response.json()) as ChooseJob).id;
}
