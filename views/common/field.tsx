/** One labelled field with its hint and its problem beside it, keeping what was typed. Knows no form. */

import type { FC, PropsWithChildren } from 'hono/jsx';
import type { Problem } from '#shared/checked.ts';
import { Problems } from './problems.tsx';

/** What a form shows again after it was refused. */
export interface Entry {
  readonly typed: Readonly<Record<string, string>>;
  readonly problems: readonly Problem[];
  /** What else to say beside a field, in place of its hint. */
  readonly notes?: Readonly<Record<string, string>>;
  /** Fields that are only half typed: no mistake yet. */
  readonly unfinished?: readonly string[];
}

export const BLANK_ENTRY: Entry = { typed: {}, problems: [] };

interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly entry: Entry;
  readonly value?: string | undefined;
  readonly hint?: string | undefined;
  readonly kind?: 'length' | 'size' | 'count' | 'code' | 'words';
  readonly autofocus?: boolean | undefined;
  readonly optional?: boolean;
  /** The id of a list of likely answers. */
  readonly list?: string;
  readonly placeholder?: string;
  /** Where the likely answers to what is being typed come from, and those that stand there at first. */
  readonly likely?: { readonly from: string; readonly first: readonly string[] };
}

export const Field: FC<FieldProps> = ({
  name,
  label,
  entry,
  value = '',
  hint,
  kind = 'words',
  autofocus,
  optional,
  list,
  placeholder,
  likely,
}) => (
  <Labelled name={name} label={optional ? `${label} (if you like)` : label} entry={entry} hint={hint}>
    <input
      id={name}
      name={name}
      class={kind === 'code' ? 'count' : kind}
      value={entry.typed[name] ?? value}
      inputmode={kind === 'count' ? 'numeric' : undefined}
      autocomplete="off"
      list={likely ? `${name}-likely` : list}
      placeholder={placeholder}
      autofocus={autofocus || problemOf(entry, name) !== undefined}
      {...(likely ? followed(likely.from) : {})}
      aria-invalid={problemOf(entry, name) ? 'true' : undefined}
      aria-describedby={`${name}-note`}
    />
    {likely ? (
      <datalist id={`${name}-likely`}>
        <LikelyAnswers answers={likely.first} />
      </datalist>
    ) : null}
  </Labelled>
);

export const LikelyAnswers: FC<{ answers: readonly string[] }> = ({ answers }) => (
  <>
    {answers.map((answer) => (
      <option value={answer} />
    ))}
  </>
);

/** It asks for itself, whatever its form asks for beside. */
const followed = (from: string) => ({
  'hx-get': from,
  'hx-trigger': 'input changed delay:150ms',
  'hx-target': 'next datalist',
  'hx-swap': 'innerHTML',
  'hx-sync': 'this:replace',
  'hx-replace-url': 'false',
});

export const TextArea: FC<FieldProps> = ({ name, label, entry, value = '', hint }) => (
  <Labelled name={name} label={label} entry={entry} hint={hint}>
    <textarea id={name} name={name} rows={3} aria-describedby={`${name}-note`}>
      {entry.typed[name] ?? value}
    </textarea>
  </Labelled>
);

interface ChoiceProps extends FieldProps {
  /** Where another form on the page asks by the same name. */
  readonly id?: string;
  readonly choices: readonly { value: string; label: string }[];
}

export const Choice: FC<ChoiceProps> = ({ name, id = name, label, entry, value = '', hint, choices }) => (
  <Labelled name={name} id={id} label={label} entry={entry} hint={hint}>
    <select id={id} name={name} aria-describedby={`${id}-note`}>
      {choices.map((choice) => (
        <option value={choice.value} selected={choice.value === (entry.typed[name] ?? value)}>
          {choice.label}
        </option>
      ))}
    </select>
  </Labelled>
);

interface FormProblemsProps {
  readonly entry: Entry;
  readonly fields: readonly string[];
  /** Whose fields' problems come and go as they are typed, so that only the whole form's stand in front. */
  readonly live?: boolean;
}

/** What is wrong, in front of the fields. */
export const FormProblems: FC<FormProblemsProps> = ({ entry, fields, live = false }) => (
  <Problems
    problems={live ? entry.problems.filter(({ field }) => !fields.includes(field)) : entry.problems}
    fields={fields}
  />
);

type LabelledProps = PropsWithChildren<
  Pick<FieldProps, 'name' | 'label' | 'entry' | 'hint'> & { id?: string }
>;

/** For a field of any other kind, whose id is `name` and whose words are described by `name-note`. */
export const Labelled: FC<LabelledProps> = ({ name, id = name, label, entry, hint, children }) => (
  <div class={problemOf(entry, name) ? 'field wrong' : 'field'}>
    <label for={id}>{label}</label>
    {children}
    <Note name={name} id={id} entry={entry} hint={hint} />
  </div>
);

/** What stands under a field, to replace the one on the page out of band. */
export const fieldNote = (name: string, entry: Entry, hint = '') => (
  <Note name={name} id={name} entry={entry} hint={hint} outOfBand />
);

type NoteProps = Pick<FieldProps, 'name' | 'entry' | 'hint'> & { id: string; outOfBand?: boolean };

/** Its problem, else its hint. */
const Note: FC<NoteProps> = ({ name, id, entry, hint, outOfBand }) => {
  const problem = problemOf(entry, name);
  return (
    <p
      id={`${id}-note`}
      class={problem ? 'problem' : entry.unfinished?.includes(name) ? 'hint unfinished' : 'hint'}
      role={problem ? 'alert' : undefined}
      hx-swap-oob={outOfBand ? 'true' : undefined}
    >
      {problem ?? entry.notes?.[name] ?? hint}
    </p>
  );
};

const problemOf = (entry: Entry, name: string): string | undefined =>
  entry.problems.find((problem) => problem.field === name)?.message;
