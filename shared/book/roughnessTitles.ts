/** Titles of the workings of a surface's roughness that a screen shows. */
export const ALLOWANCE_TITLE = "roughness allowance";
export const FURTHER_TITLE = "how much further the lip stands off";
