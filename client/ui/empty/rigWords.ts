/** What a test asks of whoever makes it, as the first lines of its page in docs/rigs/ say it. */
export interface RigWords {
  /** "About 10 minutes; pack or supply, …" */
  readonly takes: string;
  /** what can hurt */
  readonly caution: string;
}

const paragraph = (page: string, lead: RegExp): string => lead.exec(page)?.[1] ?? "";

/** @returns time and things that a rig takes, and what can hurt, from its page */
export function rigWords(page: string): RigWords {
  const takes = paragraph(page, /^\*\*It takes\*\* (.+)$/m);
  return {
    takes: takes.charAt(0).toUpperCase() + takes.slice(1),
    caution: paragraph(page, /^\*\*(?:Before it turns|What can hurt)\.\*\* (.+)$/m),
  };
}
