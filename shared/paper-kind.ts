/** The kinds of paper that a pad may be of. Knows no weights. */

export const PAPER_KINDS = ['patterned', 'cardstock', 'plain', 'kraft', 'vellum', 'handmade'] as const;

export type PaperKind = (typeof PAPER_KINDS)[number];
