/** Reads and prints a paper's weight as labels write it: `80 lb cover`, `216 g/m²`. Knows no stock and no makers. */
import { accept, type Checked, refuse } from '#shared/checked.ts';
import { GRADES, type Grade, gramsPerSquareMetre, type PaperWeight } from './weight.ts';

/**
 * Reads `216 g/m²`, `216gsm`, `80 lb cover`, `80# cover`, `20 lb bond`. Pounds without a grade are refused, since the
 * same figure names papers of twice the weight.
 */
export function readPaperWeight(text: string, field = ''): Checked<PaperWeight> {
  const found = /^(\d{1,4}(?:[.,]\d{1,2})?) ?(g\/m²|g\/m2|gsm|g|lbs?\.?|#) ?([a-z]*)$/.exec(
    text.trim().toLowerCase(),
  );
  const amount = Number(found?.[1]?.replace(',', '.'));
  if (!found || !(amount > 0))
    return refuse(field, `“${text.trim().slice(0, 40)}” isn’t a paper weight. ${UNDERSTOOD}`);
  const [, , unit, name] = found;
  if (unit!.startsWith('g')) {
    return name
      ? refuse(field, `Grams per square metre need no grade. ${UNDERSTOOD}`)
      : checkRange({ unit: 'g/m²', amount }, field);
  }
  const grade = NAMES.get(name!);
  return grade ? checkRange({ unit: 'lb', amount, grade }, field) : refuse(field, whichGrade(amount, name!));
}

/** `80 lb cover (216 g/m²)`; grams are shown to the nearest whole one. */
export function printPaperWeight(weight: PaperWeight): string {
  if (weight.unit === 'g/m²') return `${weight.amount} g/m²`;
  return `${weight.amount} lb ${weight.grade} (${Math.round(gramsPerSquareMetre(weight))} g/m²)`;
}

const UNDERSTOOD = 'Write it like 216 g/m² or 80 lb cover.';

/** From tissue to the heaviest board that folds. */
const LIGHTEST = 8;
const HEAVIEST = 1200;

/** Each grade under its own name and under those that share its basic sheet. */
const NAMES = new Map<string, Grade>([
  ...GRADES.map((grade): [string, Grade] => [grade, grade]),
  ['writing', 'bond'],
  ['ledger', 'bond'],
  ['book', 'text'],
  ['offset', 'text'],
]);

function checkRange(weight: PaperWeight, field: string): Checked<PaperWeight> {
  const grams = gramsPerSquareMetre(weight);
  if (grams >= LIGHTEST && grams <= HEAVIEST) return accept(weight);
  return refuse(
    field,
    `That comes to ${Math.round(grams)} g/m². Paper lies between ${LIGHTEST} and ${HEAVIEST} g/m².`,
  );
}

function whichGrade(amount: number, name: string): string {
  const [text, cover] = (['text', 'cover'] as const).map((grade) =>
    Math.round(gramsPerSquareMetre({ unit: 'lb', amount, grade })),
  );
  const unknown = name ? `“${name}” isn’t a grade I know. ` : '';
  return `${unknown}Say which grade: ${amount} lb text is ${text} g/m², ${amount} lb cover ${cover}. Others: bond, index, tag, bristol.`;
}
