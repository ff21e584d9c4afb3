/** Title of the working of a pack's capacity, which is shown beside its form as well. */
export const PACK_CAPACITY_TITLE = "capacity of the pack";
