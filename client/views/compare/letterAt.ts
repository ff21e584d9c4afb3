const A = "A".charCodeAt(0);

/** @returns what the build at a place of the table is called: "A" */
export const letterAt = (place: number): string => String.fromCharCode(A + place);
