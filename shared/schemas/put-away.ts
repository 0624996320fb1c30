/** What is asked to put a thing away or to bring it back: its kind and its number. */
import { z } from 'zod';
import { AWAY_KINDS } from '../put-away.ts';
import { choiceField, idField } from './fields.ts';

export const awayForm = z.object({ kind: choiceField(AWAY_KINDS), id: idField });
