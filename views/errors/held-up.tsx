/** The page where the book could not be read or written just now: which of these it was, and what was typed, to send again. */
import type { FC } from 'hono/jsx';
import type { Trouble } from '#shared/trouble.ts';

export interface Unsent {
  readonly action: string;
  readonly fields: readonly (readonly [name: string, value: string])[];
}

/** `unsent` is the form that was not carried out; nothing is sent again where something was only to be read. */
export const HeldUp: FC<{ trouble: Trouble; unsent: Unsent | undefined }> = ({ trouble, unsent }) => (
  <section>
    <h1>{SAID[trouble].what}</h1>
    <p class="lead">
      {unsent ? 'Nothing was written. ' : ''}
      {SAID[trouble].advice}
    </p>
    {unsent && <Again {...unsent} />}
  </section>
);

const Again: FC<Unsent> = ({ action, fields }) => (
  <form action={action} method="post">
    {fields.map(([name, value]) => (
      <input type="hidden" name={name} value={value} />
    ))}
    <p>What you typed is kept on this page.</p>
    <button type="submit">Send it again</button>
  </form>
);

const SAID: Record<Trouble, { readonly what: string; readonly advice: string }> = {
  busy: {
    what: 'Another program is holding the book.',
    advice: 'A backup, a sync or a second Creasebook may have it open. Try again in a moment.',
  },
  full: {
    what: 'There is no room left on the disk.',
    advice: 'Make some room on the disk that holds the book, then try again.',
  },
  'read-only': {
    what: 'The book may only be read.',
    advice: 'Let Creasebook write to its file and to the folder around it, then try again.',
  },
  damaged: {
    what: 'The book is damaged.',
    advice: 'Stop Creasebook and start it again: it says which backup to put back.',
  },
  gone: {
    what: 'The book is no longer where it was.',
    advice:
      'Its file or folder was moved or deleted while Creasebook ran. Put it back, start Creasebook again, then try again.',
  },
  unreachable: {
    what: 'The disk does not answer.',
    advice: 'See that the disk with the book is there and sound, then try again.',
  },
};
