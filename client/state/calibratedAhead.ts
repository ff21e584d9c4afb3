import type { Book } from "../../shared/book/book.ts";
import { learnCalibration } from "../../shared/book/calibration.ts";
import { calibrationSteps } from "../../shared/book/calibrationSteps.ts";
import type { CalibrationResponse } from "../../shared/model/api/calibration.ts";
import { alike } from "../../shared/numeric/alike.ts";
import { route } from "../app/router.ts";
import { ApiError, api } from "./api.ts";
import { shownIn, showsBuild } from "./build.ts";
import { inSteps } from "./inSteps.ts";
import { whileBookStands } from "./replaceBook.ts";

/** So long a book waits for what the server knows of it; the page then works it out itself [ms]. */
const PATIENCE = 500;

/** Browser and server may round powers and logarithms in another last digit: fits then differ by far less than this [-]. */
const ROUNDING = 1e-9;

/**
 * Asks the server for the calibration of the build that a book is about to be shown with: it has worked it out before,
 * or does so while this page stays free. Without its answer, or where the server knows another book, the page works it out itself.
 *
 * @param book - not yet on the screen
 * @param signal - gives it up
 */
export async function calibrateAhead(book: Book, signal: AbortSignal): Promise<void> {
  const build = showsBuild(route.peek().view) ? shownIn(book) : null;
  const own = build && (await inSteps(calibrationSteps(book, build.data), () => !signal.aborted));
  if (!own) return;
  const path = `/builds/${encodeURIComponent(build.id)}/calibration`;
  try {
    const { request, answer } = await api.get<CalibrationResponse>(path, {
      signal: whileBookStands(signal),
      patience: PATIENCE,
    });
    // An answer counts for the numbers that it was worked out from, whichever book they stand in.
    if (answer && alike(request, own, ROUNDING)) learnCalibration(own, answer);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
  }
}
