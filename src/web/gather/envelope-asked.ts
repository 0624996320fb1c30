/** From typed fields to the envelope that they ask for, on the tool in use. Knows no page and no shelf. */
import type { z } from 'zod';
import { THIN_BULK } from '#core/envelope/fit.ts';
import type { FitLimits, Notcher, Want } from '#core/envelope/recipe.ts';
import { type Fitting, fitEnvelope } from '#core/project/fitting.ts';
import type { Tool } from '#core/project/learning.ts';
import { accept, type Checked } from '#shared/checked.ts';
import type { Length, Units } from '#shared/length.ts';
import type { WantedFit } from '#shared/outcome.ts';
import type { EnvelopeAsked } from '#shared/schemas/envelope.ts';
import { readFits } from '#stores/fits.ts';
import { chosenNotcher } from '#stores/notchers.ts';
import type { Settings } from '#stores/settings.ts';
import type { Request } from '../http/env.ts';
import { check, type Typed } from '../http/form.ts';

interface Defaults {
  readonly bulk: Length;
  readonly fit: WantedFit;
}

/** The envelope that a form's fields ask for, or everything that is wrong with them. */
export async function findEnvelope<Asked extends EnvelopeAsked>(
  c: Request,
  form: (units: Units, defaults: Defaults) => z.ZodType<Asked>,
  typed: Typed,
): Promise<Checked<{ readonly asked: Asked; readonly tool: Tool; readonly fitting: Fitting }>> {
  const asked = check(form(c.get('units'), defaultsFrom(c.get('settings'))), typed);
  if (!asked.ok) return asked;
  const { tool, ...setting } = await settingIn(c);
  const fitting = envelopeAsked(asked.value, setting, c.get('units'));
  return fitting.ok ? accept({ asked: asked.value, tool, fitting: fitting.value }) : fitting;
}

/** The tool in use as it really sets, and the limits that her fits are graded by. */
export async function settingIn(c: Request): Promise<Setting & { readonly tool: Tool }> {
  const { tool, notcher } = await chosenNotcher(c.get('db'));
  const { limits } = await readFits(c.get('db'), c.get('settings').fits);
  return { tool, notcher, limits };
}

export interface Setting {
  readonly notcher: Notcher;
  readonly limits: FitLimits;
}

/** The recipe that a checked question asks for. */
export const envelopeAsked = (asked: EnvelopeAsked, setting: Setting, units: Units): Checked<Fitting> =>
  fitEnvelope(
    {
      card: asked,
      ...setting,
      want: wantOf(asked),
      fold: asked.fold,
      blank: {
        ...(asked.cutWidth && { width: asked.cutWidth }),
        ...(asked.cutHeight && { height: asked.cutHeight }),
      },
      square: asked.square,
      start: asked.start,
      flapC: { shape: asked.cShape, depth: asked.cDepth, more: asked.cMore },
      flapD: { shape: asked.dShape, depth: asked.dDepth, more: asked.dMore },
    },
    units,
  );

export const defaultsFrom = ({ wantedFit }: Settings): Defaults => ({ bulk: THIN_BULK, fit: wantedFit });

/** Within a limit on the outer size the snuggest is looked for, unless she says how it should sit. */
function wantOf({ fit, boxWidth, boxHeight, front }: EnvelopeAsked): Want {
  const lie = front === 'any' ? {} : { front };
  if (boxWidth === undefined && boxHeight === undefined) return { fit, ...lie };
  return {
    ...lie,
    largestOuter: { ...(boxWidth && { width: boxWidth }), ...(boxHeight && { height: boxHeight }) },
  };
}
