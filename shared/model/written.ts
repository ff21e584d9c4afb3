/**
 * The header of a list that says how the book stood just before it was read: the `written` of GET /bench. Lists that say
 * the same are of one state, and of the present one while GET /bench says it as well.
 */
export const WRITTEN = "Book-Written";
