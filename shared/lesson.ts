/** The steps of the work that a lesson may belong to, in the order in which they come. Knows no lessons. */
export const LESSON_STEPS = ['paper', 'fit', 'cut', 'notch', 'score', 'fold', 'glue'] as const;

export type LessonStep = (typeof LESSON_STEPS)[number];
