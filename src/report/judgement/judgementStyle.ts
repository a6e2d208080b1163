/** What the note on a judgement adds to the report's style sheet. */
export const JUDGEMENT_STYLE = `
.title-block{display:grid;grid-template-columns:repeat(3,1fr);gap:0;margin:.8rem 0;padding:0;border:1px solid var(--zero)}
.title-block div{padding:.25rem .6rem .3rem;border:1px solid var(--rule);min-width:0}
.title-block dt{font-size:.8rem;color:var(--muted)}
.title-block dd{margin:0;min-height:1.4em;overflow-wrap:anywhere}
.title-block .blank{border-bottom:1px solid var(--muted)}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.mark{width:.85em;height:.85em;margin-right:.4em;vertical-align:-.06em;flex:none}
.verdict{font-weight:650}
.small{font-size:.9rem}
.labelled{margin:.9rem 0}
.labelled table{overflow-wrap:break-word}
.labelled small{display:block;color:var(--muted);font-size:.85em;font-weight:400;white-space:normal}
.labelled tbody th{min-width:0}
.labelled .number{white-space:normal;padding-right:1.2em}
.labelled .keep{white-space:nowrap}
.labelled thead th{vertical-align:bottom}
.criteria table{table-layout:fixed}
.signatures{display:grid;grid-template-columns:repeat(3,1fr);column-gap:1.5rem;margin-top:2.2rem}
.signatures p{border-top:1px solid var(--ink);margin:0;padding-top:.2rem;font-size:.85rem;color:var(--muted)}
@media screen and (max-width:700px){
.title-block,.signatures{grid-template-columns:1fr}
.signatures{row-gap:2.2rem}
.labelled table,.labelled tbody,.labelled caption{display:block}
.labelled thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.labelled tr{display:block;padding:.4rem 0 .45rem;border-bottom:1px solid var(--rule)}
.labelled tbody th,.labelled td{display:block;width:auto;padding:0;border:0;line-height:1.4;overflow-wrap:anywhere}
.labelled tbody th{font-weight:650}
.labelled td.number{text-align:left}
.labelled td[data-label]::before{content:attr(data-label) ": ";color:var(--muted)}
}
@media print{
.labelled .number{padding-right:9pt}
.title-block{margin:4pt 0}
.title-block div{padding:1pt 5pt 2pt}
.title-block dt{font-size:7pt}
.title-block dd{font-size:8.5pt;min-height:11pt}
.small{font-size:7.6pt;line-height:1.25}
.labelled{margin:5pt 0}
.labelled.whole{break-inside:avoid}
.judged{break-after:page}
.judged .finding{font-size:10pt;line-height:1.25}
.judged .question{margin:2pt 0}
.judged .numbers{margin:3pt 0}
.judged .numbers div{padding:2pt 6pt 2pt 0}
.judged .numbers .value{font-size:11pt}
.judged .numbers .detail,.judged .numbers dt{font-size:7.2pt;line-height:1.2}
.judged .labelled{margin:2pt 0}
.judged table{font-size:7pt;line-height:1.12}
.judged th,.judged td{padding:.8pt 5pt .8pt 0}
.judged .number{padding-right:9pt}
.judged h1{font-size:13.5pt}.judged h1.long{font-size:9pt}
.judged .kind{font-size:8pt}
.signatures{margin-top:18pt}
.signatures p{font-size:7.2pt}
}
`;
