/** The fields of each kind of part, beside the card that most of them are for. Knows no answer. */
import type { Child, FC } from 'hono/jsx';
import { type Length, typedLength, type Units } from '#shared/length.ts';
import {
  ENDS,
  type FOLDED_AT,
  NOTCHED_EDGES,
  type PATHS,
  type PartKind,
  ROUND,
  type RUNS,
  usualMeasures,
  WRAPS,
} from '#shared/schemas/parts.ts';
import { Choice, type Entry, Field } from '../common/field.tsx';

interface Props {
  readonly entry: Entry;
  readonly units: Units;
}

export const CardFields: FC<Props> = ({ entry, units }) => (
  <div class="fields">
    <Field name="width" label="Card width" kind="length" entry={entry} autofocus={!entry.typed.width} />
    <Field name="height" label="Card height" kind="length" entry={entry} />
    <Field
      name="bulk"
      label="Its bulk"
      kind="length"
      entry={entry}
      value={typedLength(usualMeasures(units).bulk, units)}
    />
    <Choice name="foldAt" label="Folded at" entry={entry} value="left" choices={FOLD_CHOICES} />
    <HowMany entry={entry} />
  </div>
);

export const HowMany: FC<{ entry: Entry }> = ({ entry }) => (
  <>
    <Field name="copies" label="How many" kind="count" entry={entry} value="1" />
    <div class="field">
      <span class="label">Its print</span>
      <label class="has-up">
        <input type="checkbox" name="upright" checked={entry.typed.upright === 'on'} /> may not be turned
      </label>
    </div>
  </>
);

/** What is asked of one kind beside its card. */
export const OwnFields: FC<Props & { kind: PartKind }> = ({ kind, ...props }) => (
  <>{FIELDS[kind](askingOf(props))}</>
);

/** The fields that the kinds have in common, bound to what was typed. */
interface Asking {
  readonly entry: Entry;
  readonly usual: ReturnType<typeof usualMeasures>;
  readonly Measure: FC<{ name: string; label: string; of?: Length; hint?: string }>;
  readonly Pick: FC<{ name: string; label: string; from: readonly string[] }>;
}

const askingOf = ({ entry, units }: Props): Asking => ({
  entry,
  usual: usualMeasures(units),
  Measure: ({ name, label, of, hint }) => (
    <Field
      name={name}
      label={label}
      kind="length"
      entry={entry}
      value={of === undefined ? '' : typedLength(of, units)}
      hint={hint}
    />
  ),
  Pick: ({ name, label, from }) => (
    <Choice name={name} label={label} entry={entry} value={from[0]!} choices={from.map(asChoice)} />
  ),
});

const margin = ({ Measure, usual }: Asking): Child => (
  <Measure name="margin" label="Margin" of={usual.insideMargin} />
);

const FIELDS: Record<PartKind, (ask: Asking) => Child> = {
  base: ({ Measure, usual }) => (
    <Measure name="gap" label="Gap of a gate" of={usual.gap} hint="between its two leaves" />
  ),
  front: ({ Measure, usual }) => (
    <>
      <Measure name="margins.0" label="Margin" of={usual.margin} hint="of the card, all round" />
      <Measure name="margins.1" label="Margin again" hint="a second layer, if any" />
      <Measure name="margins.2" label="And again" hint="a third, if any" />
    </>
  ),
  inside: margin,
  insert: margin,
  liner: ({ Measure, usual }) => (
    <>
      <Measure name="glue" label="Glue on the flap" of={usual.glue} hint="in from its edge" />
      <Measure name="side" label="Clear at each side" of={usual.side} />
    </>
  ),
  wrap: ({ Measure, Pick, usual, entry }) => (
    <>
      <Pick name="kind" label="It is a" from={WRAPS} />
      <Pick name="round" label="It goes round" from={ROUND} />
      <Choice name="path" label="Its way" entry={entry} value="whole card" choices={PATH_CHOICES} />
      <Choice name="run" label="It runs" entry={entry} value="across" choices={RUN_CHOICES} />
      <Measure name="breadth" label="How wide" of={usual.breadth} />
      <Measure name="overlap" label="Overlap" of={usual.overlap} hint="of its ends" />
      <Pick name="ends" label="Its ends" from={ENDS} />
      <Measure name="leafBulk" label="One leaf’s bulk" hint="half the card’s, if empty" />
    </>
  ),
  notches: ({ Measure, Pick, usual }) => (
    <>
      <Measure name="panel.width" label="Panel width" hint="the card’s less a margin, if empty" />
      <Measure name="panel.height" label="Panel height" />
      <Pick name="edges" label="Notched at" from={NOTCHED_EDGES} />
      <Measure name="at" label="Notch at" hint="from left or top; the middle, if empty" />
      <Measure name="ribbon" label="Ribbon’s width" of={usual.ribbon} />
      <Measure name="depth" label="How deep" of={usual.depth} />
    </>
  ),
  tag: ({ Measure, usual }) => (
    <>
      <Measure name="tagWidth" label="Tag width" of={usual.tag.width} />
      <Measure name="tagHeight" label="Tag height" of={usual.tag.height} />
      <Measure name="corner" label="Corners cut" of={usual.corner} hint="0 leaves them square" />
      <Measure name="hole" label="Hole across" of={usual.hole} hint="0 for none" />
    </>
  ),
  box: ({ Measure, usual }) => (
    <>
      <Measure name="boxWidth" label="Box width" of={usual.box.width} hint="outside, along the hinge" />
      <Measure name="depth" label="Box depth" of={usual.box.depth} hint="front to hinge" />
      <Measure name="boxHeight" label="Box height" of={usual.box.height} hint="closed" />
      <Measure name="lid" label="Of that the lid" of={usual.lid} />
      <Measure name="free" label="Free at the hinge" of={usual.free} />
      <Measure name="margin" label="Bare along edges" of={usual.boxMargin} />
    </>
  ),
};

const asChoice = (value: string) => ({ value, label: value });

const FOLD_CHOICES: readonly { value: (typeof FOLDED_AT)[number]; label: string }[] = [
  { value: 'left', label: 'the left: a book' },
  { value: 'right', label: 'the right' },
  { value: 'top', label: 'the top: a tent' },
  { value: 'sides', label: 'both sides: a gate' },
  { value: 'top and bottom', label: 'top and bottom: a gate' },
];

const PATH_CHOICES: readonly { value: (typeof PATHS)[number]; label: string }[] = [
  { value: 'whole card', label: 'round the whole of it' },
  { value: 'front leaf', label: 'round the front leaf' },
  { value: 'inside back', label: 'round the back leaf' },
];

const RUN_CHOICES: readonly { value: (typeof RUNS)[number]; label: string }[] = [
  { value: 'across', label: 'across' },
  { value: 'up', label: 'up and down' },
];
