/** A value that is edited where it stands: as it is shown, and its one field in its place. Knows no store. */
import type { Child, FC } from 'hono/jsx';
import type { InPlaceKind } from '#shared/schemas/in-place.ts';
import { type Entry, Field } from './field.tsx';
import { howMany } from './words.ts';

interface Props {
  readonly kind: InPlaceKind;
  readonly id: number;
  readonly text: string;
}

interface ShownProps extends Props {
  readonly focus?: boolean;
  /** It stands in a line of others, and is itself what is pressed. */
  readonly inLine?: boolean;
}

export const InPlace: FC<ShownProps> = ({ kind, id, text, focus, inLine = false }) => {
  const edit = `/in-place/${kind}/${id}/edit${asked(inLine)}`;
  if (inLine)
    return (
      <span class="in-place">
        <a class="changes" href={edit} hx-get={edit} hx-target="closest .in-place" autofocus={focus}>
          {IN_LINE[kind]?.(text) ?? text}
          <span class="hidden">: change {LABELS[kind].toLowerCase()}</span>
        </a>
      </span>
    );
  return (
    <div class="in-place">
      {SHOWN[kind](text)}
      <a class="no-print" href={edit} hx-get={edit} hx-target="closest .in-place" autofocus={focus}>
        change<span class="hidden"> {LABELS[kind].toLowerCase()}</span>
      </a>
    </div>
  );
};

/** Without script a page of its own. */
export const InPlaceField: FC<Props & { entry: Entry; inLine?: boolean }> = ({
  kind,
  id,
  text,
  entry,
  inLine = false,
}) => {
  const at = `/in-place/${kind}/${id}${asked(inLine)}`;
  return (
    <form class="in-place fields" method="post" action={at} hx-post={at} hx-target="this">
      <input type="hidden" name="_method" value="PUT" />
      <Field
        name="value"
        label={LABELS[kind]}
        kind={kind === 'offcut-count' ? 'count' : 'words'}
        entry={entry}
        value={text}
        autofocus
      />
      <p class="row">
        <button type="submit" class="small">
          Save
        </button>{' '}
        <a href={addressOf(kind, id)} hx-get={at} hx-target="closest .in-place">
          leave it
        </a>
      </p>
    </form>
  );
};

const asked = (inLine: boolean): string => (inLine ? '?line=yes' : '');

export const addressOf = (kind: InPlaceKind, id: number): string => `${PAGES[kind]}/${id}`;

const PAGES: Record<InPlaceKind, string> = {
  'project-title': '/projects',
  'series-name': '/series',
  'pad-name': '/pads',
  'design-name': '/designs',
  'offcut-place': '/offcuts',
  'offcut-count': '/offcuts',
};

const LABELS: Record<InPlaceKind, string> = {
  'project-title': 'Title',
  'series-name': 'Name of the series',
  'pad-name': 'Name of the pad',
  'design-name': 'Name of the design',
  'offcut-place': 'Place',
  'offcut-count': 'How many there are',
};

const heading = (text: string): Child => <h1>{text}</h1>;

const SHOWN: Record<InPlaceKind, (text: string) => Child> = {
  'project-title': heading,
  'series-name': heading,
  'pad-name': heading,
  'design-name': heading,
  'offcut-place': (text) => <p class="lead">{text === '' ? 'no place yet' : text}</p>,
  'offcut-count': (text) => <p>{text === '0' ? 'none left' : howMany(Number(text), 'piece')}</p>,
};

const IN_LINE: Partial<Record<InPlaceKind, (text: string) => string>> = {
  'offcut-place': (text) => text || 'no place',
  'offcut-count': (text) => `× ${text}`,
};
