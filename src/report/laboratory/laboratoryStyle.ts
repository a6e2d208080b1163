/** Rules beside those of report and lesson: steps that stay together, boxes to write in. */
export function laboratoryStyle(): string {
  return `
.danger{border:2px solid var(--alarm);border-left-width:10px;padding:.4rem .9rem;margin:.8rem 0}
.danger h2{border:0;margin:.2rem 0;padding:0}
.danger li:nth-child(-n+3){font-weight:600}
.set{columns:2;column-gap:1.6rem;padding-left:1.1rem;font-size:.9rem}
.step h2 .no{color:var(--muted);font-weight:500}
.step ol{margin:.4rem 0;padding-left:1.4rem}
.readings td,.readings th,.trials td,.trials th{border:1px solid var(--rule);padding:.3rem .5rem}
.readings .how,.readings .outside{color:var(--muted);font-size:.92em;font-weight:400}
.readings tr.outside td{border-top:0}
.readings thead th:first-child{width:46%}
.readings td,.trials .stated td{white-space:nowrap}
.readings td.outside{white-space:normal}
.readings td.write,.trials td{min-width:5rem}
.trials td{height:1.7rem}
.trials .stated td{color:var(--muted)}
.tick{margin:.3rem 0}
.tick::before{content:"\\2610";margin-right:.5em}
@media print{
.set{font-size:8pt;line-height:1.25;margin:2pt 0}
.danger{padding:3pt 7pt;margin:5pt 0;border-width:1.5pt;border-left-width:6pt;break-inside:avoid}
.danger ul{columns:2;column-gap:14pt}
.readings td,.readings th{padding:2.4pt 4pt}
.readings tr{break-inside:avoid}
.readings tr.reading{break-after:avoid}
.readings td.write{height:22pt}
.trials{break-inside:avoid}
.trials td{height:15pt;padding:1pt 4pt}
.trials th{padding:1pt 4pt}
.page{break-before:page}
.together{break-inside:avoid}
.expect svg,.sketch svg{max-height:222mm}
}
`;
}
