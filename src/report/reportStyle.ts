import { colourProperties } from './palette.ts';
import { cleanText } from './plainText.ts';

/** Text as a CSS string: every character that is not a plain letter or digit is written as its code. */
export function cssString(text: string): string {
  const escaped = [...cleanText(text)].map((character) =>
    /[A-Za-z0-9 ]/u.test(character) ? character : `\\${character.codePointAt(0)?.toString(16)} `,
  );
  return `"${escaped.join('')}"`;
}

/** The report's style sheet: screen in both themes, telephone, and print as a calculation note on A4 or Letter. */
export function reportStyle(footer: string): string {
  return `
:root{color-scheme:light dark;${colourProperties('light')};--alarm:#9B1C00}
@media (prefers-color-scheme:dark){:root{${colourProperties('dark')};--alarm:#FFB199}}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--ink);font:16px/1.5 system-ui,'Segoe UI','Helvetica Neue',Arial,sans-serif;font-variant-numeric:tabular-nums}
main,header,footer{max-width:62rem;margin:0 auto;padding:0 1.25rem}
header{padding-top:1.5rem}
h1{font-size:1.6rem;line-height:1.25;margin:.1rem 0 .4rem;overflow-wrap:anywhere}
h1.long{font-size:1.1rem}
h2{font-size:1.25rem;margin:2.4rem 0 .6rem;padding-top:.5rem;border-top:2px solid var(--rule);break-after:avoid}
h3{font-size:1.02rem;margin:1.4rem 0 .4rem;break-after:avoid}
p{margin:.5rem 0;overflow-wrap:anywhere}
a{color:inherit}
.kind,.muted,figcaption{color:var(--muted)}
.kind{margin:0;font-size:.9rem}
.question{font-style:italic;margin-top:.8rem}
.finding{font-size:1.15rem;line-height:1.45}
.alarm{border:2px solid var(--alarm);border-left-width:10px;padding:.6rem .9rem;margin:1rem 0;font-weight:600}
.note{border-left:6px solid var(--rule);padding:.3rem .9rem;margin:.8rem 0}
.numbers{display:grid;grid-template-columns:repeat(4,1fr);gap:0;margin:1.1rem 0;padding:0;border-block:1px solid var(--rule)}
.numbers div{padding:.55rem .8rem .6rem 0}
.numbers dt{font-size:.85rem;color:var(--muted)}
.numbers dd{margin:0}
.numbers .value{font-size:1.35rem;font-weight:650;line-height:1.3}
.numbers .range{font-size:.7em;font-weight:500;white-space:nowrap}
.numbers .detail{font-size:.85rem;color:var(--muted)}
.cautions{font-weight:600}
figure{margin:1.4rem 0;break-inside:avoid}
figure svg{display:block;width:100%;height:auto}
figure .narrow{display:none}
.scroll{overflow-x:auto}
table{border-collapse:collapse;width:100%;font-size:.9rem}
caption{text-align:left;font-weight:600;padding:.3rem 0}
th,td{text-align:left;vertical-align:top;padding:.28rem .7rem .28rem 0;border-bottom:1px solid var(--rule)}
thead th{color:var(--muted);font-weight:600;border-bottom:2px solid var(--rule)}
tbody th{font-weight:500;min-width:9rem}
tbody th.at{min-width:0;width:7rem}
.number{text-align:right;white-space:nowrap}
.at{white-space:nowrap}
.wide-word{overflow-wrap:anywhere}
.group th{padding-top:1.1rem;font-weight:650}
.stacked td:last-child{width:44%}
.plot{margin:.4rem 0 1.6rem}
#interactive{width:min(1700px,100vw - 4rem);margin-left:calc(50% - min(1700px,100vw - 4rem)/2)}
footer{padding-bottom:2rem;margin-top:2rem;font-size:.9rem;color:var(--muted)}
@media screen and (max-width:700px){
.numbers{grid-template-columns:1fr 1fr}
figure .wide{display:none}
figure .narrow{display:block}
main,header,footer{padding:0 .9rem}
h1:not(.long){font-size:1.35rem}
#interactive{width:auto;margin-left:0}
.stacked table,.stacked tbody,.stacked caption{display:block}
.stacked thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.stacked tr{display:flex;flex-wrap:wrap;column-gap:.6rem;padding:.3rem 0 .35rem;border-bottom:1px solid var(--rule)}
.stacked th,.stacked td{padding:0;border:0;line-height:1.35}
.stacked th{flex:1 0 100%}
.stacked .group{padding-top:1.1rem;border-bottom-width:2px}
.stacked .group th{padding:0}
.stacked td:empty{display:none}
.stacked .number{font-weight:600}
.stacked .at::before{content:"at "}
.stacked .phase::before{content:"phase "}
.stacked .stated::before{content:"aim ";font-weight:400}
.stacked .reproduced::before{content:"circuit ";font-weight:400}
.stacked .error::before{content:"error ";font-weight:400}
.stacked td:last-child{flex:1 0 100%;width:auto;font-size:.8rem;color:var(--muted)}
}
@page{margin:15mm 15mm 18mm;
@bottom-left{content:${cssString(footer)};font:8pt system-ui,Arial,sans-serif;color:#545B63}
@bottom-right{content:"page " counter(page) " of " counter(pages);white-space:nowrap;width:25mm;font:8pt system-ui,Arial,sans-serif;color:#545B63}}
@media print{
:root{color-scheme:light;${colourProperties('light')};--alarm:#000000}
body{font-size:9.5pt;line-height:1.38;background:#FFFFFF}
main,header,footer{max-width:none;padding:0}
header{padding-top:0}
h1{font-size:15pt}h1.long{font-size:9pt}h2{font-size:12.5pt;margin-top:14pt}h3{font-size:10.5pt;margin-top:9pt}
.finding{font-size:10.5pt;margin:3pt 0}
.question{margin-top:3pt}
.numbers{margin:5pt 0}
.numbers .value{font-size:12.5pt}
.numbers .detail,.numbers dt{font-size:8pt}
table{font-size:8pt;line-height:1.22}
th,td{padding:1.4pt 5pt 1.4pt 0}
tbody th{min-width:0}
caption{padding:2pt 0}
.scroll{overflow:visible;margin-top:5pt}
.whole{break-inside:avoid}
.scroll::before{content:"";display:block;height:70pt;margin-bottom:-70pt;break-inside:avoid}
.inputs,.folded{columns:2;column-gap:16pt}
.stacked thead th:first-child{width:20%}
.stacked thead th:last-child{width:50%}
.stacked td.words{white-space:nowrap}
.stacked td.words:last-child{white-space:normal}
.group th{padding-top:6pt}
.group{break-after:avoid}
li{margin:0}ul{margin:4pt 0}
tr,figure,.numbers,.alarm,.note,li{break-inside:avoid}
figure{margin:6pt 0}
thead{display:table-header-group}
.first{break-after:page}
.first figure{margin:3pt 0}
.first figure svg{max-height:76mm}
.first:has(h1.long) figure svg{max-height:66mm}
.first.dense figure svg,.first.dense:has(h1.long) figure svg{max-height:61mm}
.first p{margin:3pt 0}
.screen,.plotly-notifier{display:none!important}
}
`;
}
