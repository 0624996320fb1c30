/** What a project waits for, so that its page can say one thing largest. Knows no words and no drawings. */
import type { Envelope, ProjectInFull, ProjectSoFar } from './journal.ts';

/** `missing`: how many blanks are still to be taken from the shelf. */
export type Next =
  | { readonly kind: 'choose envelope' }
  | { readonly kind: 'take paper'; readonly missing: number }
  | { readonly kind: 'make trial'; readonly envelope: Envelope }
  | { readonly kind: 'make'; readonly envelope: Envelope }
  | { readonly kind: 'write down'; readonly envelopes: readonly Envelope[] }
  | { readonly kind: 'lesson' }
  | { readonly kind: 'nothing' };

/** A trial comes first; then every blank; then what is missing; then how it went. A finished one is only written up. */
export function nextThing(full: ProjectInFull): Next {
  const { project, envelopes } = full;
  const toMake = project.finishedAt === null ? nextToMake(full) : undefined;
  if (toMake) return toMake;
  const unwritten = envelopes.filter((one) => one.state === 'made' && !one.outcome);
  if (unwritten.length > 0) return { kind: 'write down', envelopes: unwritten };
  return project.lesson === '' ? { kind: 'lesson' } : { kind: 'nothing' };
}

/** Whether a piece has been folded to the end, so that the card could be tried in it. */
export const hasTried = (envelopes: readonly Envelope[]): boolean =>
  envelopes.some((one) => one.state === 'made');

/** Of which nothing is noted yet, if there is one: about this it is asked how it came out before all is called finished. */
export const lastMade = (envelopes: readonly Envelope[]): Envelope | undefined => {
  const made = envelopes.filter((one) => one.state === 'made');
  return made.findLast((one) => !one.outcome) ?? made.at(-1);
};

/** The envelopes that count towards the batch: all but a trial from scrap, which has no paper of the project. */
export const ofTheBatch = (envelopes: readonly Envelope[]): readonly Envelope[] =>
  envelopes.filter((one) => one.cut !== null || !one.trial);

export const missingBlanks = (quantity: number, envelopes: readonly Envelope[]): number =>
  Math.max(0, quantity - ofTheBatch(envelopes).filter((one) => one.state !== 'spoiled').length);

/** Blanks still to be cut: none before its envelope is worked out. */
export const lacking = ({ project, envelopes }: ProjectSoFar): number =>
  project.recipe ? missingBlanks(project.quantity, envelopes) : 0;

function nextToMake({ project, envelopes }: ProjectInFull): Next | undefined {
  if (!project.recipe) return { kind: 'choose envelope' };
  const blank = blankToMake(envelopes);
  if (blank) return { kind: hasTried(envelopes) ? 'make' : 'make trial', envelope: blank };
  const missing = missingBlanks(project.quantity, envelopes);
  return missing > 0 ? { kind: 'take paper', missing } : undefined;
}

/** What is already under way on scrap comes before the good paper. */
const blankToMake = (envelopes: readonly Envelope[]): Envelope | undefined => {
  const blanks = envelopes.filter((one) => one.state === 'blank');
  return blanks.find((one) => one.cut === null) ?? blanks[0];
};
