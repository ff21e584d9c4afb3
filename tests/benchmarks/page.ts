import type { Results } from "./parts.ts";
import type { Row } from "./row.ts";
import { tableMarkdown } from "./table.ts";

const INTRODUCTION = `Written by \`npm run bench\`; \`npm run bench -- --json\` prints the same as one JSON object. Seconds are of one machine on one day; the ratios, taken within one run, carry over to others.`;

const HOW = `## How it is measured

Each part runs in a process of its own, so that none warms or crowds another. The sweep, its C and the choosing take turns, and of a few runs each the fastest counts: whatever else a machine does only ever slows a run. Everything else is a median after warm-up; what is called first is the first run of a fresh process, compiling included. Client and server are built as they are shipped and put in a folder of their own; nothing is asked of a running server's data.

- **Sweep**: a million coupled operating points, each from its neighbour's solution, their inputs made within the clock; \`tests/benchmarks/sweep.c\` is the same loop, the same start and the same steps.
- **Choosing**: the same million as a question: solved, judged by every limit, run down where that decides, first page ranked, the non-dominated combinations found. The bare solves are the engine's own, in the same threads, of the same combinations, and nothing more. As a job of the server it goes through the pool, the columns and the front as a request does.
- **Cancelled** is timed over HTTP on the built server: until the stream says so, and until the threads have answered another small question in full.
- **Drag**: a real pointer on the gap's handle in Match, a pixel a frame, with seven builds laid over and a curve test of two thousand readings. Model and redraw run from the start of the handle's event until its script, its style and its layout are done, which is forced; the painted frame is over when the browser goes on to the next task after the paint, so that it holds the wait for the frame as well.
- **Costs** are of a short way over the plain way to the same answer, the least of five; that the answers agree is tested.
- **First load**: what the browser asked for until Match stood still, each file gzipped by itself; of its workers, what they imported as well.
- **Felt speed**: the demo as it comes, on a screen of a laptop. Cold: a browser that has nothing kept, three times, the middle one; the panels are there once nothing waits for its script or its answer and nothing on the page has changed for a second and a half. A longest task is that of all visits. A slower processor is the browser's own throttle of the page's thread; its other threads run at full speed. A change of view runs from the click on its name to the painted view, everything in it that needs no other thread included.
- **List pages**: over HTTP, the answer read and parsed, with a hundred thousand pull tests of the demo's size stored, and a thousand builds of eleven states each; every page once a round, ten rounds for warmth and then twenty that count.
- **Archive**: of that book, out of one server to a file and from the file into another that holds the demo; memory is the process's own high-water mark, its threads included, over what it held three seconds after its start.
- **Long book opened**: in a browser that has nothing kept, with the demo's parts and tests and those of fifty other makers, a hundred thousand tests altogether; tests are counted in the answers, those of the list's first page as well.
- **Held up**: GET /bench is asked over and over of the built server while each long request runs alone; the largest that the API takes, in the order of the table, the search's results asked of the same search.
- **Load**: every client asks again as soon as it has its answer, over a connection of its own; an answer that is no success ends the measurement. Clients and server share the machine's cores. The event streams are opened and left six times; what counts is the memory in use behind the last beyond that behind the first, once what is no longer used is collected: what the engine keeps for itself in between is none of theirs.`;

const BOUNDS = `## What bounds it

**The sweep against C.** A point takes some 5.6 evaluations of both laws, each with up to four square roots and seven divisions, most of which wait for one another; that chain is the same in either language, and it is most of the time; writing the case takes about a fifth. What is left between the two: every read of a typed array is checked against its length, the compiler of C folds the air and the lip into constants where the engine reads them from the case, and it holds the case in registers across the steps. Reading the coefficients once before the loop, and leaving out the half of the last evaluation that is not needed, were tried and gained nothing that could be measured. Powers were what cost most beside the solver: a square written as a power calls the library, so squares are products and the fourth root two square roots.

**Choosing.** The solver of the engine carries a third unknown for windings that warm. Beyond its solves a combination costs its margins over the attitudes asked for, its limits and, where no other limit keeps it out, its time to the end of the charge. Ranking and the non-dominated combinations run on one thread after the last piece, so two threads gain less than twice; and small questions pay for the start of their pieces.

**Joints and running gear that gives.** With a joint met either way each combination has three operating points in the place of one; a hundred thousand combinations, one thread, took 3.7 times the bare solves beside the joint, 1.2 times those of all three points. Where the running gear gives, each mode is judged at a gap of its own, in each of the three places: thirty-six gaps a combination in the question that is measured. They are solved by the search's own Newton, five of them for a stand-in and then those alone where the least margin may lie: some hundredth of a millisecond a combination, where the general solver took milliseconds. The budget (3.5 times) is judged by the bare solves of all these gaps; over one solve a combination it is about a hundred, which no search that solves each mode's own gap can bring to 3.5.

**Memory of a job** is 92 bytes a combination for the results, the pieces on their way, and the keys that the non-dominated combinations are found by.

**The fit** solves eight least-squares problems, degrees one to four of both curves, with refinement in twice the working precision; the first one in a process is compiled while it runs.

**A drag** is bound by nothing alone. Of a move's processor time on the demo, profiled on a busy machine, two fifths are script, a fifth style and layout, and the rest the browser's own: paint, frames, the pointer's events. Of the script a sixth solves and judges the build, a tenth makes the chart's data and a sixth draws it; half is the components, their numbers and the page's elements, and what the sampling thread is sent and answers. With a thousand crosses shown, their path and the labels' places weigh more.

**A cold start** waits for one thing after another: the page, its script, the book, the calibration, the first verdict. The book is asked for before anything else; whether it was written between its reading and the event stream is looked at once that stands. The server works calibrations and next tests out ahead, names the scripts of a screen with its page, and the chart, the chance and the panels below come behind the first verdict's paint.`;

/** @returns docs/benchmarks.md */
export function pageOf({ machine }: Pick<Results, "machine">, rows: readonly Row[]): string {
  const { cores, node, date } = machine;
  const run = `This run: ${date}, ${cores} cores, Node ${node}.`;
  return `${["# Benchmarks", INTRODUCTION, run, tableMarkdown(rows), HOW, BOUNDS].join("\n\n")}\n`;
}
