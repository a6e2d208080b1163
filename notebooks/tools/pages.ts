import { marked } from 'marked';
import type { FinishedNotebook } from './withResults.ts';

const FIGURE = /<p><img src="figures\/([^"]+)" alt="[^"]*"><\/p>/gu;
const ANSWER = /<details>[\s\S]*?<\/details>\n*/gu;
const CODE = /^```ts\n[\s\S]*?^```\n/gmu;
/** Speaks of results, which a handout has none of. */
const CONVENTION = /^Numbers in bold are computed[\s\S]*?\n\n/mu;
/** Lines to write an answer on. */
const LINES_TO_WRITE = '<div class="write"></div>\n\n';

const STYLE = `
:root{color-scheme:light}
body{margin:0 auto;max-width:62rem;padding:1rem 1.25rem 3rem;background:#FFFFFF;color:#14181D;font:16px/1.5 system-ui,'Segoe UI','Helvetica Neue',Arial,sans-serif;font-variant-numeric:tabular-nums}
h1{font-size:1.7rem;line-height:1.25}h2{font-size:1.25rem;margin-top:2rem}h3{font-size:1.05rem}
pre{overflow-x:auto;padding:.6rem .8rem;background:#ECEFF2;font-size:.85rem;line-height:1.4}
pre:has(.language-text){background:none;border-left:4px solid #545B63}
table{border-collapse:collapse}th,td{border:1px solid #D3D8DD;padding:.25rem .5rem;text-align:left}
figure{margin:1rem 0}figure svg{max-width:100%;height:auto}
details{border:1px solid #D3D8DD;padding:.4rem .8rem;margin:.6rem 0}summary{cursor:pointer;font-weight:600}
.write{height:7.5rem;margin:.4rem 0 1rem;background:repeating-linear-gradient(transparent 0 1.8rem,#545B63 1.8rem calc(1.8rem + 1px))}
@page{margin:14mm;@bottom-right{content:"page " counter(page) " of " counter(pages);font:8pt system-ui,Arial,sans-serif;color:#545B63}}
@media print{pre{white-space:pre-wrap;overflow-wrap:anywhere}body{font-size:10pt;max-width:none;padding:0}figure,pre,table,.write{break-inside:avoid}h2,h3{break-after:avoid}.write{-webkit-print-color-adjust:exact;print-color-adjust:exact}}
`;

/** The whole notebook as one page that opens without a network, with its figures in it; a click opens an answer. */
export function notebookPage({ text, figures }: FinishedNotebook): string {
  return page(text, figures);
}

/** The same with every answer open: for the teacher, on paper too. */
export function answersPage({ text, figures }: FinishedNotebook): string {
  return page(text.replaceAll('<details>', '<details open>'), figures);
}

/**
 * What a class gets on paper: prediction, goals (after it, for they may hint at the answer) and exercises, with room to write; no
 * results, no answers.
 *
 * @throws Error where the notebook lacks one of these sections
 */
export function handoutPage({ text }: FinishedNotebook): string {
  const [opening = ''] = text.split(/^## /mu, 1);
  const parts = ['Predict first', 'What you will learn', 'Exercises'].map((heading) =>
    sectionOf(text, heading),
  );
  const written = parts.map((part) =>
    part
      .replaceAll(ANSWER, LINES_TO_WRITE)
      .replaceAll(CODE, '')
      .replaceAll(/<!-- room to write -->\n/gu, LINES_TO_WRITE),
  );
  return page([opening.replace(CONVENTION, ''), ...written].join('\n\n'), new Map());
}

/** A section with its heading, as far as the next of the same rank. */
export function sectionOf(text: string, heading: string): string {
  const [, section] = new RegExp(`^(## ${heading}\\n[\\s\\S]*?)(?=^## |(?![\\s\\S]))`, 'mu').exec(text) ?? [];
  if (section === undefined) throw new Error(`no section "${heading}"`);
  return section;
}

function page(text: string, figures: ReadonlyMap<string, string>): string {
  const title = /^# (.*)$/mu.exec(text)?.[1] ?? '';
  const body = marked
    .parse(text, { async: false })
    .replaceAll(FIGURE, (_, file: string) => `<figure>${figures.get(file) ?? ''}</figure>`);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width,initial-scale=1">
<title>${title}</title>
<style>${STYLE}</style>
</head>
<body>
${body}</body>
</html>
`;
}
