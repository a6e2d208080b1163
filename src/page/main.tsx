import { effect } from '@preact/signals';
import { render } from 'preact';
import { App } from './App.tsx';
import { firstInput } from './firstInput.ts';
import { keepFocus } from './keepFocus.ts';
import { isLinkProblem, readLink } from './link.ts';
import { registerServiceWorker } from './registerServiceWorker.ts';
import { newStore } from './store.ts';
import { startTheme } from './theme.ts';
import './base.css';
import './app.css';
import './largePrint.css';

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
// Another link in the same window is another scenario; a damaged one leaves everything as it is.
window.addEventListener('hashchange', async () => {
  const link = await readLink(window.location.hash);
  if (isLinkProblem(link)) state.linkTrouble.value = link.message;
  else window.location.reload();
});
const root = document.getElementById('app');
if (root !== null) {
  keepFocus(root);
  render(<App state={state} act={act} />, root);
}
