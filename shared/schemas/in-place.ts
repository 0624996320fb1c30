/** What may be edited where it stands, one field each: names, places, counts. Knows no page. */
import { z } from 'zod';
import { countField, noteField, wordsField } from './fields.ts';

export const IN_PLACE = [
  'project-title',
  'series-name',
  'pad-name',
  'design-name',
  'offcut-place',
  'offcut-count',
] as const;

export type InPlaceKind = (typeof IN_PLACE)[number];

const FIELDS: Record<InPlaceKind, z.ZodType<string | number>> = {
  'project-title': wordsField('it a title'),
  'series-name': wordsField('it a name', 80),
  'pad-name': wordsField('the pad a name', 80),
  'design-name': wordsField('the design a name', 80),
  'offcut-place': noteField(60),
  'offcut-count': countField(0, 1000),
};

export const inPlaceForm = (kind: InPlaceKind) => z.object({ value: FIELDS[kind] });
