import type { ComponentChildren } from 'preact';
import type { AnyRecord } from '../../records/kind/kinds';
import { Boundary } from '../../ui/fault/Boundary';
import { faultText } from '../../ui/fault/FaultNotice';
import { go, route } from '../nav/route';
import { describe } from './describe';
import type { Description } from './description';

interface Props {
  record: AnyRecord;
  /** What stands under the title. */
  line: (description: Description) => ComponentChildren;
  class?: string;
  /** What it looks like, before its words. */
  picture?: ComponentChildren;
  /** Steps that it is moved in. */
  indent?: number;
  /** What is beside the button. */
  children?: ComponentChildren;
}

/** A row of a list: one record, which a tap opens. One that breaks says so in its own row and can be opened all the same. */
export function Entry({ record, line, class: sort = '', picture, indent = 0, children }: Props) {
  return (
    <li class={sort || undefined} style={indent > 0 ? { marginInlineStart: `${indent}rem` } : undefined}>
      <Boundary of={record} otherwise={(error) => <BrokenEntry record={record} error={error} />}>
        <Sound record={record} line={line} picture={picture} />
      </Boundary>
      {children}
    </li>
  );
}

function Sound({ record, line, picture }: Pick<Props, 'record' | 'line' | 'picture'>) {
  const description = describe(record);
  if (description.fault) throw description.fault.error;
  const { code, title } = description;
  return (
    <button
      class={picture ? 'entry pictured' : 'entry'}
      aria-current={route.value[0] === 'record' && route.value[1] === record.id ? 'true' : undefined}
      onClick={() => go(['record', record.id])}
    >
      {picture}
      {code && <span class="code">{code}</span>}
      <b>{title}</b>
      <span>{line(description)}</span>
    </button>
  );
}

function BrokenEntry({ record: { kind, id }, error }: { record: AnyRecord; error: unknown }) {
  return (
    <button class="entry" onClick={() => go(['record', id])}>
      <b>
        {kind} {id}
      </b>
      <span>
        This entry cannot be shown; it is kept as it is.
        <small>{faultText(error)}</small>
      </span>
    </button>
  );
}
