/** Why something can't be undone, in words. Knows no way round it. */
import type { Overtaken, PieceRef } from '#core/stash/stash.ts';
import { printDay } from './when.tsx';

/** `nameOf` says which paper is meant: `offcut K7`, `the sheets of Fern`. */
export function sayOvertaken(why: Overtaken, nameOf: (piece: PieceRef) => string): string {
  switch (why.refused) {
    case 'undone already':
      return why.at === null
        ? 'This was undone before.'
        : `This was undone before, on ${printDay(why.at)}. Once is enough.`;
    case 'counted since':
      return `There was a count of ${nameOf(why.piece)} on ${printDay(why.at)}, after this. The count is the truth now: count again if the paper is back.`;
    case 'gone since':
      return `On ${printDay(why.at)} ${nameOf(why.piece)} went (${why.kind}), so this can’t be put back as it was.`;
    case 'used since':
      return `On ${printDay(why.at)} ${nameOf(why.piece)} was used for “${why.project.title}”. Undo that first.`;
    case 'too few left':
      return `Only ${why.left} of ${nameOf(why.piece)} are left, fewer than this would take away again.`;
    case 'made since':
      return `Envelope ${why.envelope} was made or spoiled since. That paper can’t go back on the shelf.`;
  }
}
