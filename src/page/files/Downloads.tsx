import { signal } from '@preact/signals';
import type { ReportFile } from '../../index.ts';
import { isConcealing, isCovered } from '../../report/lesson/lesson.ts';
import type { PageProps } from '../actions.ts';
import { download } from '../pictures/download.ts';
import type { FileKind } from '../worker/protocol.ts';
import { MEDIA_TYPES } from './mediaTypes.ts';

const KINDS: readonly { readonly kind: FileKind; readonly label: string; readonly about: string }[] = [
  { kind: 'report', label: 'Report of the run', about: 'report, figures, trace and summary' },
  { kind: 'sheet', label: 'Commissioning sheet', about: 'what each test on the bench should show' },
  { kind: 'note', label: 'Calculation note', about: 'whether plugging suits the load' },
];

/** What has come of one kind. */
interface Made {
  /** What it was made of; it is not offered for anything else. */
  readonly text: string;
  readonly units: string;
  /** null: being made. */
  readonly files: readonly ReportFile[] | null;
  readonly trouble: string;
}

/** It outlasts a look at another task. */
const made = signal<Readonly<Partial<Record<FileKind, Made>>>>({});

/** The files that the command line writes, of the scenario as it stands. */
export function Downloads({ state, act }: PageProps) {
  const text = state.text.value;
  const units = state.units.value;
  // They would tell what a class is asked to find out, or tell of a starter without its hidden fault.
  const closed = isCovered(state.lesson.value) || isConcealing(state.lesson.value);
  const broken = closed || state.problems.value.length > 0;
  const make = async (kind: FileKind) => {
    const keep = (files: readonly ReportFile[] | null, trouble: string) => {
      made.value = { ...made.value, [kind]: { text, units, files, trouble } };
    };
    keep(null, '');
    try {
      keep(await act.files(kind), '');
    } catch (error) {
      keep([], error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <section class="downloads" aria-label="Files to download">
      <h3>Download</h3>
      {closed ? <p>Closed until the task of the class is revealed.</p> : null}
      {KINDS.map(({ kind, label, about }) => {
        const found = made.value[kind];
        const current =
          found !== undefined && found.text === text && found.units === units ? found : undefined;
        return (
          <div class="download-kind" key={kind}>
            <button
              type="button"
              disabled={broken || current?.files === null}
              onClick={() => void make(kind)}
            >
              {label}
            </button>
            <small>{about}</small>
            <div role="status">
              {current?.files === null ? 'Being made …' : null}
              {current === undefined || current.trouble === '' ? null : (
                <p class="alarm">{current.trouble}</p>
              )}
            </div>
            {current?.files == null || current.files.length === 0 ? null : (
              <ul>
                {current.files.map(({ name, content }) => (
                  <li key={name}>
                    <button
                      type="button"
                      onClick={() => download(name.split('/').at(-1) ?? name, content, mediaType(name))}
                    >
                      Save {name}
                    </button>
                  </li>
                ))}
              </ul>
            )}
          </div>
        );
      })}
    </section>
  );
}

function mediaType(name: string): string {
  return MEDIA_TYPES[name.split('.').at(-1) ?? ''] ?? 'text/plain';
}
