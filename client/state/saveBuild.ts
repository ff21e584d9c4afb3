import type { Build } from "../../shared/model/build.ts";
import type { StoredOf } from "../../shared/model/record.ts";
import { ApiError, api } from "./api.ts";
import { keep } from "./book.ts";

/** Stores a changed build. @returns null, or why the server refused it */
export async function saveBuild(build: StoredOf<"builds">, data: Build): Promise<string | null> {
  try {
    const path = `/builds/${encodeURIComponent(build.id)}`;
    keep("builds", await api.put<StoredOf<"builds">>(path, data, build.revision));
    return null;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return error.fields[0]?.message ?? error.message;
  }
}
