import type { Book } from "../../shared/book/book.ts";
import { calibrationToDo, learnCalibration } from "../../shared/book/calibration.ts";
import type { CalibrationRequest } from "../../shared/fit/calibration.ts";
import type { CalibrationResponse } from "../../shared/model/api/calibration.ts";
import { answerOrNull } from "../../shared/numeric/errors.ts";
import { route } from "../app/router.ts";
import { ApiError, api } from "./api.ts";
import { shownIn, showsBuild } from "./build.ts";

/** So long a book waits for what the server knows of it; the page then works it out itself [ms]. */
const PATIENCE = 1500;

/**
 * Asks the server for the calibration of the build that a book is about to be shown with: it has worked it out before,
 * or does so while this page stays free. Without its answer, or where the server knows another book, the page works it out itself.
 *
 * @param book - not yet on the screen
 * @param signal - gives it up
 */
export async function calibrateAhead(book: Book, signal: AbortSignal): Promise<void> {
  const build = showsBuild(route.peek().view) ? shownIn(book) : null;
  if (!build || !answerOrNull(() => calibrationToDo(book, build.data))) return;
  const path = `/builds/${encodeURIComponent(build.id)}/calibration`;
  try {
    const { request, answer } = await api.get<CalibrationResponse>(path, { signal, patience: PATIENCE });
    // An answer counts for the very numbers that it was worked out from, whichever book they stand in.
    if (request && answer) learnCalibration(request as unknown as CalibrationRequest, answer);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
  }
}
