import { colourProperties } from './palette.ts';
import { cssString } from './reportStyle.ts';

/** The commissioning sheet's style: a table to scroll on screen, A4 across with a line to write on for every test in print. */
export function sheetStyle(footer: string): string {
  return `
:root{color-scheme:light dark;${colourProperties('light')};--alarm:#9B1C00}
@media (prefers-color-scheme:dark){:root{${colourProperties('dark')};--alarm:#FFB199}}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--ink);font:15px/1.4 system-ui,'Segoe UI','Helvetica Neue',Arial,sans-serif;font-variant-numeric:tabular-nums}
header,main{padding:0 1.25rem}
header{padding-top:1.2rem}
h1{font-size:1.5rem;line-height:1.25;margin:.1rem 0 .3rem;overflow-wrap:anywhere}
h2{font-size:1rem;margin:0 0 .2rem}
p,ul{margin:.25em 0}
ul{padding-left:1.2rem}
.kind,.plate{color:var(--muted);margin:0}
.plate::first-letter{text-transform:uppercase}
.blanks{display:flex;flex-wrap:wrap;gap:.4rem 1.5rem;margin:.8rem 0}
.blanks div{flex:1 1 9rem}
.blanks dt{font-size:.9em;color:var(--muted)}
.blanks dd{margin:0;height:1.5rem;border-bottom:1px solid var(--ink)}
.cautions{border:2px solid var(--alarm);border-left-width:10px;padding:.5rem .8rem;margin:.8rem 0}
.cautions li:nth-child(-n+3){font-weight:600}
.finding{font-weight:650;font-size:1.05rem}
.scroll{overflow-x:auto;margin-top:.8rem}
table{border-collapse:collapse;width:100%;min-width:88rem;table-layout:fixed;font-size:.85rem;line-height:1.3}
th,td{border:1px solid var(--rule);padding:.25rem .4rem;text-align:left;vertical-align:top;overflow-wrap:break-word}
td p,th p{margin:0}
td p+p,th p+p{margin-top:.15rem}
thead th{white-space:nowrap;overflow-wrap:normal;border-bottom:2px solid var(--zero)}
tbody th{font-weight:650}
.group th{background:var(--band);font-size:1.05em}
.number{width:3.4%}
.test{width:8.5%}
.hands{width:12.3%}
.expected{width:14.3%}
.shows{width:15.6%}
.verdict{width:7.2%}
.clamp{width:7.9%}
.tachometer{width:7.6%}
.duration{width:7.6%}
.measured{width:7.8%}
.remarks{width:7.8%}
.thought .measured,.thought .remarks{background:var(--band);-webkit-print-color-adjust:exact;print-color-adjust:exact}
td.number{text-align:right}
.strong{font-weight:650}
.note{color:var(--muted)}
.danger{font-weight:650;border-left:4px solid var(--alarm);padding-left:.3rem}
.differs .verdict,.notSimulated .verdict{outline:2px solid var(--alarm);outline-offset:-2px}
.differs .verdict .strong,.notSimulated .verdict .strong{text-transform:uppercase}
.definitions{margin:1rem 0 2rem}
@page{size:A4 landscape;margin:9mm 9mm 13mm;
@bottom-left{content:${cssString(footer)};font:7.5pt system-ui,Arial,sans-serif;color:#545B63}
@bottom-right{content:"page " counter(page) " of " counter(pages);white-space:nowrap;width:25mm;font:7.5pt system-ui,Arial,sans-serif;color:#545B63}}
@media print{
:root{color-scheme:light;${colourProperties('light')};--alarm:#000000;--rule:#8A939C}
body{font-size:8.5pt;line-height:1.3;background:#FFFFFF}
header,main{padding:0}
h1{font-size:14pt}h2{font-size:9.5pt}
.finding{font-size:9.5pt;margin:1pt 0}
.more{display:inline-block;margin-right:8pt}
.cautions{padding:3pt 6pt;margin:5pt 0;border-width:1.5pt;border-left-width:6pt;break-inside:avoid}
.cautions ul{columns:2;column-gap:14pt}
li{break-inside:avoid;margin:0}
.blanks{margin:4pt 0}
.blanks dd{height:15pt}
.scroll{overflow:visible;margin-top:5pt}
table{min-width:0;font-size:7.1pt;line-height:1.2}
th,td{padding:1.6pt 2.4pt;border-width:.5pt}
td p+p,th p+p{margin-top:1pt}
thead{display:table-header-group}
tr{break-inside:avoid}
.group{break-after:avoid}
.group th{-webkit-print-color-adjust:exact;print-color-adjust:exact}
.danger{border-left-width:3pt;padding-left:2pt}
.definitions{break-inside:avoid;margin-top:6pt;font-size:8pt}
}
`;
}
