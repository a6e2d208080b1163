import { htmlHead } from '../htmlHead.ts';
import { escapeMarkup } from '../plainText.ts';
import { reportStyle } from '../reportStyle.ts';
import { JUDGEMENT_STYLE } from './judgementStyle.ts';

/** What a page of a judgement consists of. */
export interface NotePageOptions {
  /** Plain text. */
  readonly title: string;
  /** Foot of every printed page, before the version; plain text. */
  readonly footer: string;
  /** Version of the program. */
  readonly version: string;
  /** Sections as markup. */
  readonly body: readonly string[];
}

/** An HTML file that needs nothing else, fetches nothing and runs nothing. */
export function notePage({ title, footer, version, body }: NotePageOptions): string {
  const program = `countertorque ${version}`;
  return `${htmlHead({ title, program, style: `${reportStyle(`${footer} · ${program}`)}${JUDGEMENT_STYLE}` })}
<body>
<main>
${body.filter((section) => section !== '').join('\n')}
</main>
<footer class="screen"><p>${escapeMarkup(title)} · ${escapeMarkup(program)}</p></footer>
</body>
</html>
`;
}
