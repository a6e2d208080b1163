import plotlyUrl from 'plotly.js-basic-dist-min?url';
import './noEval.ts';
import { expose, transfer } from 'comlink';
import { buffersOf } from './buffersOf.ts';
import { newEngine } from './engine.ts';
import type { Engine } from './protocol.ts';
import { VERSION } from './version.ts';

const engine = newEngine({
  version: VERSION,
  async plotlySource() {
    const answer = await fetch(plotlyUrl);
    if (!answer.ok) throw new Error('The plotting library of the report could not be loaded.');
    return answer.text();
  },
});

const exposed: Engine = {
  ...engine,
  // The columns of a run go over without being copied.
  async run(order) {
    const answer = await engine.run(order);
    return answer.kind === 'run' ? transfer(answer, buffersOf(answer.view)) : answer;
  },
  async settle() {
    const settled = await engine.settle();
    return transfer(settled, buffersOf(settled.pictures));
  },
};

expose(exposed);
