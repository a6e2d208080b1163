import { effect } from '@preact/signals';
import { render } from 'preact';
import { App } from './App.tsx';
import { firstInput } from './firstInput.ts';
import { keepFocus } from './keepFocus.ts';
import { registerServiceWorker } from './registerServiceWorker.ts';
import { newStore } from './store.ts';
import { startTheme } from './theme.ts';
import './base.css';
import './app.css';

startTheme();
const { first, trouble } = await firstInput(window.location.hash);
const { state, act } = newStore(first, () => {
  performance.mark('usable');
  // Keeping every file for use without a network competes with the first view on a slow line: it waits.
  void registerServiceWorker();
});
state.linkTrouble.value = trouble;
effect(() => {
  document.documentElement.dataset.print = state.largePrint.value ? 'large' : 'usual';
});
// Another link in the same window is another scenario.
window.addEventListener('hashchange', () => window.location.reload());
const root = document.getElementById('app');
if (root !== null) {
  keepFocus(root);
  render(<App state={state} act={act} />, root);
}
