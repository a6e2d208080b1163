/**
 * The report's own script: draws the figures of the data element with the plotting library in the colours of the
 * page's theme, and again when the theme or the width class changes. Without it the page shows the static figures.
 */
export const REPORT_SCRIPT = `'use strict';
(() => {
  const section = document.getElementById('interactive');
  const figures = JSON.parse(document.getElementById('figure-data').textContent);
  if (typeof Plotly === 'undefined' || section === null) return;
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const slim = matchMedia('(max-width: 700px)');
  const large = matchMedia('(min-width: 1400px)');
  section.hidden = false;
  const link = document.getElementById('interactive-link');
  if (link !== null) link.hidden = false;

  function decode(column) {
    const text = atob(column.bdata);
    const bytes = new Uint8Array(text.length);
    for (let i = 0; i < text.length; i += 1) bytes[i] = text.charCodeAt(i);
    return column.dtype === 'f4' ? new Float32Array(bytes.buffer) : new Float64Array(bytes.buffer);
  }

  function resolve(value, context, isColour) {
    if (typeof value === 'string') {
      return isColour && value.startsWith('colour:')
        ? context.style.getPropertyValue('--' + value.slice(7)).trim()
        : value;
    }
    if (Array.isArray(value)) return value.map((item) => resolve(item, context, isColour));
    if (value === null || typeof value !== 'object') return value;
    if ('column' in value) return context.columns[value.column];
    if (value.range === true) return context.range;
    const out = {};
    for (const key of Object.keys(value)) out[key] = resolve(value[key], context, key.endsWith('color'));
    return out;
  }

  const decoded = figures.map((figure) => figure.columns.map(decode));

  function draw() {
    const style = getComputedStyle(document.documentElement);
    const ink = style.getPropertyValue('--ink').trim();
    const kind = slim.matches ? 'narrow' : large.matches ? 'large' : 'wide';
    figures.forEach((figure, index) => {
      const context = { style, columns: decoded[index], range: figure.layout.xaxis.range };
      const layout = resolve(figure.layout, context, false);
      const size = resolve(figure.sizes[kind], context, false);
      layout.annotations = layout.annotations.concat(size.annotations);
      layout.shapes = layout.shapes.concat(size.shapes);
      layout.height = size.height;
      layout.margin = { l: kind === 'narrow' ? 56 : 90, r: size.right, t: size.top, b: 50 };
      layout.paper_bgcolor = 'rgba(0,0,0,0)';
      layout.plot_bgcolor = 'rgba(0,0,0,0)';
      layout.font = { family: 'system-ui, sans-serif', size: size.text, color: ink };
      Plotly.react('plot-' + figure.id, resolve(figure.traces, context, false), layout, {
        responsive: true,
        // On a telephone the tool bar would cover the words of the events.
        displayModeBar: kind === 'narrow' ? false : 'hover',
        displaylogo: false,
        // No button that would send the curves to anybody.
        showSendToCloud: false,
        modeBarButtonsToRemove: ['lasso2d', 'select2d', 'autoScale2d'],
        toImageButtonOptions: { format: 'svg', filename: figure.id },
      });
    });
  }

  draw();
  dark.addEventListener('change', draw);
  slim.addEventListener('change', draw);
  large.addEventListener('change', draw);
})();`;
