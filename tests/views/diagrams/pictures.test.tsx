/** Holds every picture of pictures.tsx against its stored SVG in tests/snapshots. */
import { describe, it } from 'vitest';
import { expectPicture } from '#tests/support/snapshot.ts';
import * as pictures from './pictures.tsx';

describe('pictures', () => {
  for (const [name, picture] of Object.entries(pictures)) {
    if (typeof picture === 'function') it(name, () => expectPicture(kebab(name), picture()));
  }
});

const kebab = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
