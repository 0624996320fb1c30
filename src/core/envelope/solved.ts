/** The solver's latest answers by their questions: the same card asked for again, in another number or look, is not solved twice. */
import type { Recipe } from './recipe.ts';
import { type Asked, solveEnvelope } from './recipes.ts';

/** Questions kept, the one longest unasked given up first: up to three dozen recipes each, a few MB in all. */
const KEPT = 100;

const answers = new Map<string, readonly Recipe[]>();

/** As `solveEnvelope`, from memory where the very same was asked of late. */
export function solvedEnvelope({ card: { width, height, bulk }, ...setting }: Asked): readonly Recipe[] {
  const asked = { ...setting, card: { width, height, bulk } };
  const { card, notcher, want, limits, folds } = asked;
  const question = JSON.stringify([card, notcher, want, limits, folds]);
  const answer = answers.get(question) ?? solveEnvelope(asked);
  answers.delete(question);
  answers.set(question, answer);
  if (answers.size > KEPT) answers.delete(answers.keys().next().value!);
  return answer;
}
