import type { Plugin } from 'vite';

/**
 * Keeps the integrator's calls of Math.pow as they are written: the minifier turns them into the operator, which is the engine's own
 * power, and the numbers of a run would then depend on the browser (`simulate/withOwnPowers.ts`).
 */
export function ownPowers(): Plugin {
  return {
    name: 'own-powers',
    transform: {
      filter: { id: /\/node_modules\/odex\// },
      handler: (code) => ({ code: code.replaceAll('Math.pow(', 'globalThis.Math.pow('), map: null }),
    },
  };
}
