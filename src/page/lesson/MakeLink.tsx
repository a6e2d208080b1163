import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { LinkParts } from '../../report/lesson/linkParts.ts';
import { isLinkProblem, linkOf } from '../link.ts';

/** What the button for a link is given. */
export interface MakeLinkProps {
  readonly disabled: boolean;
  /** Everything the link is made of: when it changes, a link made before is taken away. */
  readonly madeOf?: string;
  /** null: there is nothing to link to, and that has been said. */
  readonly parts: () => Promise<LinkParts | null>;
}

/** A button that copies a link; where the browser does not let it, the link stands selected to be copied by hand. */
export function MakeLink({ disabled, madeOf = '', parts }: MakeLinkProps) {
  const link = useSignal('');
  const status = useSignal('');
  const field = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    if (link.value !== '') field.current?.select();
  }, [link.value]);
  const present = useRef(madeOf);
  useEffect(() => {
    present.current = madeOf;
    link.value = '';
    status.value = '';
  }, [madeOf, link, status]);
  const make = async () => {
    const found = await parts();
    if (found === null) return;
    const made = await linkOf(found);
    // What it is made of may have changed while it was made.
    if (present.current !== madeOf) return;
    if (isLinkProblem(made)) {
      link.value = '';
      status.value = made.message;
      return;
    }
    const address = `${window.location.href.split('#')[0] ?? ''}#${made}`;
    link.value = address;
    let said = 'The link is copied.';
    try {
      await navigator.clipboard.writeText(address);
    } catch {
      said = 'The link could not be copied by itself: copy it from the field.';
    }
    if (present.current === madeOf) status.value = said;
  };
  return (
    <div class="make-link">
      <button type="button" disabled={disabled} onClick={() => void make()}>
        Make a link
      </button>
      <p role="status">{status.value}</p>
      {link.value === '' ? null : (
        <label class="field">
          Link, whole scenario and task included
          <textarea ref={field} readOnly rows={3} value={link.value} />
        </label>
      )}
    </div>
  );
}
