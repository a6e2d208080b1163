import { escapeMarkup } from '../plainText.ts';

/** Rules beside the report's style: fields and lines to write on, sheets that begin on a page of their own. */
export function lessonStyle(): string {
  return `
.blanks{display:flex;flex-wrap:wrap;gap:.4rem 1.5rem;margin:.8rem 0}
.blanks div{flex:1 1 11rem}
.blanks dt{font-size:.85rem;color:var(--muted)}
.blanks dd{margin:0;min-height:1.6rem;border-bottom:1px solid var(--ink);overflow-wrap:anywhere}
.asked{padding-left:1.4rem;margin:.4rem 0}
.asked li{margin:.7rem 0;break-inside:avoid}
.asked .choices{list-style:none;padding:0;margin:.3rem 0}
.asked .choices li{margin:.15rem 0}
.asked .choices li::before{content:"\\2610";margin-right:.5em}
.line{display:block;height:1.9rem;border-bottom:1px solid var(--ink)}
.given{columns:2;column-gap:1.6rem;padding-left:1.1rem;font-size:.9rem}
.questions h2{margin-top:1rem}
.notes .line{border-color:var(--rule)}
@media screen{.notes{display:none}}
@media print{
.answers{break-before:page;break-before:right;break-before:recto}
.axes,.notes{break-before:page}
.blanks{margin:5pt 0}
.blanks dd{min-height:16pt}
.asked{margin:2pt 0}
.asked li{margin:5pt 0}
.asked .choices li{margin:1pt 0}
.line{height:17pt}
h1{margin-bottom:2pt}
.given{font-size:8pt;line-height:1.25;margin:2pt 0}
.questions h2{font-size:10.5pt;margin:7pt 0 2pt;padding-top:3pt}
.page svg{max-height:226mm}
.half svg{max-height:112mm}
.tall svg{max-height:140mm}
.flat svg{max-height:84mm}
}
`;
}

/** Fields with a line to write on, some of them filled in already. */
export function blanks(fields: readonly (readonly [name: string, text: string])[]): string {
  const items = fields.map(
    ([name, text]) => `<div><dt>${escapeMarkup(name)}</dt><dd>${escapeMarkup(text)}</dd></div>`,
  );
  return `<dl class="blanks">${items.join('')}</dl>`;
}
