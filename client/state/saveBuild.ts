import type { Build } from "../../shared/model/build.ts";
import type { StoredOf } from "../../shared/model/record.ts";
import { ApiError } from "./api.ts";
import { correctRecord } from "./write.ts";

/** Figures are shown with what is in the book: a change that waited would stand beside figures without it. */
const NOT_SAVED = "Nothing is saved: change it again once the server is back.";

/** Stores a changed build. @returns null, or why the server refused it */
export async function saveBuild(build: StoredOf<"builds">, data: Build): Promise<string | null> {
  try {
    await correctRecord("builds", build, data);
    return null;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (error.status === 0) return `${error.message} ${NOT_SAVED}`;
    return error.fields[0]?.message ?? error.message;
  }
}
