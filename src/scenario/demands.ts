import type { Problem } from './problem.ts';

/** What a number must be. */
export type Demand = 'positive' | 'notNegative' | 'finite' | 'fraction' | 'share';

const WORDS: Readonly<Record<Demand, string>> = {
  positive: 'a finite number above 0',
  notNegative: 'a finite number, 0 or above',
  finite: 'a finite number',
  fraction: 'a number above 0 up to 1',
  share: 'a number from 0 to 1',
};

/** Collects what is wrong with a scenario object. */
export interface Demands {
  readonly problems: readonly Problem[];
  /** Reports one value. */
  report(path: string, found: unknown, expected: string): void;
  /** Holds the numbers of a group to what they must be. */
  group(path: string, object: unknown, demands: Readonly<Record<string, Demand>>): void;
  /** Reports what cannot stand beside something else. */
  conflict(path: string, message: string, expected: string): void;
  /** Holds the keys of a group to yes or no. */
  flags(path: string, object: object, keys: readonly string[]): void;
  /** Holds a word to the ones that are known. */
  word(path: string, found: unknown, known: readonly string[]): void;
}

/** An empty collection; values in SI, no line numbers. */
export function demandsOf(): Demands {
  const problems: Problem[] = [];
  const place = { file: 'scenario', line: null, column: null };
  const report: Demands['report'] = (path, found, expected) => {
    const message = found === undefined ? 'is missing' : `cannot be ${String(found)}`;
    problems.push({
      ...place,
      code: found === undefined ? 'missingKey' : 'outOfRange',
      path,
      found: String(found),
      message,
      expected,
    });
  };
  return {
    problems,
    report,
    group: (path, object, demands) => {
      if (typeof object !== 'object' || object === null) return report(path, undefined, 'a group of values');
      for (const [key, demand] of Object.entries(demands)) {
        const value: unknown = Reflect.get(object, key);
        if (!meets(value, demand)) report(`${path}.${key}`, value, WORDS[demand]);
      }
    },
    conflict: (path, message, expected) => {
      problems.push({ ...place, code: 'conflict', path, found: null, message, expected });
    },
    flags: (path, object, keys) => {
      for (const key of keys) {
        const value: unknown = Reflect.get(object, key);
        if (typeof value !== 'boolean') report(`${path}.${key}`, value, 'true or false');
      }
    },
    word: (path, found, known) => {
      if (typeof found === 'string' && known.includes(found)) return;
      report(path, found, `one of ${known.join(', ')}`);
    },
  };
}

function meets(value: unknown, demand: Demand): boolean {
  if (typeof value !== 'number' || !Number.isFinite(value)) return false;
  if (demand === 'finite') return true;
  if (demand === 'notNegative') return value >= 0;
  if (demand === 'share') return value >= 0 && value <= 1;
  return value > 0 && (demand === 'positive' || value <= 1);
}
