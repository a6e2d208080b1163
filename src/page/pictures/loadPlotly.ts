import address from 'plotly.js-basic-dist-min?url';

/** What is used of the plotting library. */
export interface Plotly {
  /** Draws into an element, or changes what is drawn there. */
  react(element: HTMLElement, data: readonly object[], layout: object, config: object): Promise<HTMLElement>;
}

declare global {
  interface Window {
    Plotly?: Plotly;
  }
}

let loading: Promise<Plotly> | null = null;

/**
 * Loads the plotting library, once. It comes as the one file that also goes into reports: a module of it would be a second megabyte.
 *
 * @throws Error when it cannot be loaded; the next call tries again
 */
export function loadPlotly(): Promise<Plotly> {
  loading ??= new Promise<Plotly>((resolve, reject) => {
    const script = document.createElement('script');
    script.src = address;
    script.addEventListener('load', () => {
      if (window.Plotly !== undefined) resolve(window.Plotly);
      else reject(new Error('its script holds no library'));
    });
    script.addEventListener('error', () => reject(new Error('its script did not come')));
    document.head.append(script);
  }).catch((error: unknown) => {
    loading = null;
    throw error;
  });
  return loading;
}
