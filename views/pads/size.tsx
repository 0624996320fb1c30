/** The fields of a sheet's size: the common ones one tap each, any other typed, and how her sheets really measure. */
import type { FC } from 'hono/jsx';
import { COMMON_SHEETS, commonName } from '#core/stash/common-sheets.ts';
import type { Pad } from '#core/stash/stash.ts';
import { printExactSize, typedLength, type Units } from '#shared/length.ts';
import { OWN_SIZE } from '#shared/schemas/pad.ts';
import { NO_STRIP } from '#shared/schemas/sheet.ts';
import { SHEET_EDGES } from '#shared/sheet.ts';
import { Choice, type Entry, Field } from '#views/common/field.tsx';

interface Props {
  readonly pad: Pad | undefined;
  readonly entry: Entry;
  readonly units: Units;
}

export const SHEET_FIELDS = [
  ...['width', 'height'],
  ...['measuredWidth', 'measuredHeight', 'stripEdge', 'stripDepth'],
];

export const SheetFields: FC<Props> = (props) => (
  <fieldset class="sheet-size">
    <legend>One sheet</legend>
    <CommonSizes {...props} />
    <div class="fields own-size">
      <Field
        name="width"
        label="Wide"
        kind="length"
        entry={props.entry}
        value={props.pad && typedLength(props.pad.sheet.width, props.units)}
      />
      <Field
        name="height"
        label="and high"
        kind="length"
        entry={props.entry}
        value={props.pad && typedLength(props.pad.sheet.height, props.units)}
        hint="along the print"
      />
    </div>
    <AsIs {...props} />
  </fieldset>
);

/** Each in the unit it is sold by, whatever the reader's; where one of them is chosen nothing is typed. */
const CommonSizes: FC<Props> = ({ pad, entry }) => {
  const chosen = entry.typed.size ?? (pad && commonName(pad.sheet)) ?? OWN_SIZE;
  return (
    <div class="choices">
      {[...COMMON_SHEETS].map(([name, size]) => (
        <label>
          <input type="radio" name="size" value={name} checked={chosen === name} />
          {/\d ×/.test(name) ? '' : `${name}, `}
          {printExactSize(size, INCHES)}
        </label>
      ))}
      <label>
        <input
          type="radio"
          name="size"
          value={OWN_SIZE}
          checked={chosen === OWN_SIZE || !COMMON_SHEETS.has(chosen)}
        />
        another size
      </label>
    </div>
  );
};

const INCHES: Units = { unit: 'in', step: 8 };

const AsIs: FC<Props> = ({ pad, entry, units }) => {
  const kept = asKept(pad, units);
  const said = AS_IS.some((name) => (entry.typed[name] ?? kept[name]) !== BLANK[name]);
  const wrong = entry.problems.some(({ field }) => (AS_IS as readonly string[]).includes(field));
  return (
    <details class="as-is" open={said || wrong}>
      <summary>My sheets measure differently, or have a strip I can’t use</summary>
      <p>
        Lay a sheet with its print upright and measure it. Plans then cut from what is really there; a side
        left empty is taken as it is sold.
      </p>
      <div class="fields">
        <Field
          name="measuredWidth"
          label="Really wide"
          kind="length"
          entry={entry}
          value={kept.measuredWidth}
        />
        <Field
          name="measuredHeight"
          label="Really high"
          kind="length"
          entry={entry}
          value={kept.measuredHeight}
        />
      </div>
      <div class="fields">
        <Choice
          name="stripEdge"
          label="A strip can’t be used"
          entry={entry}
          value={kept.stripEdge}
          hint="its line of print, an edge with glue"
          choices={EDGES}
        />
        <Field
          name="stripDepth"
          label="Strip, deep"
          kind="length"
          entry={entry}
          value={kept.stripDepth}
          hint="cut off first"
        />
      </div>
    </details>
  );
};

const AS_IS = ['measuredWidth', 'measuredHeight', 'stripEdge', 'stripDepth'] as const;

type AsTyped = Record<(typeof AS_IS)[number], string>;

const BLANK: AsTyped = { measuredWidth: '', measuredHeight: '', stripEdge: NO_STRIP, stripDepth: '' };

function asKept(pad: Pad | undefined, units: Units): AsTyped {
  const { width, height } = pad?.measured ?? {};
  return {
    measuredWidth: width === undefined ? '' : typedLength(width, units),
    measuredHeight: height === undefined ? '' : typedLength(height, units),
    stripEdge: pad?.strip?.edge ?? NO_STRIP,
    stripDepth: pad?.strip ? typedLength(pad.strip.depth, units) : '',
  };
}

const EDGES = [
  { value: NO_STRIP, label: 'no such strip' },
  ...SHEET_EDGES.map((edge) => ({ value: edge, label: `along the ${edge} edge` })),
];
