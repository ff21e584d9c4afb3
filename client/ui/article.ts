/** @returns a word with its indefinite article: "a rotor", "an instrument" */
export const withArticle = (word: string): string => `${/^[aeiou]/i.test(word) ? "an" : "a"} ${word}`;
