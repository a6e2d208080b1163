import type { z } from 'zod';
import type { NewScenarioAnswers, NewScenarioKey } from '../report/newScenarioAnswers.ts';

/** One thing that `new` wants to know: asked in a terminal, or given by an option. */
export interface Question {
  readonly key: NewScenarioKey;
  readonly group: 'Name' | 'Nameplate' | 'Load' | 'Starter' | 'Run';
  /** In a few words; begins with a capital. */
  readonly asks: string;
  readonly example: string;
  /** Reads the answer as the scenario file would. */
  readonly schema: z.ZodType;
  /** Where the answer stands in the file, and what else is put right by answering anew. */
  readonly paths: readonly string[];
  /** How the answer is taken: text as it is, a word of capitals or of small letters, or a number with or without unit. */
  readonly takes: 'text' | 'capitals' | 'word' | 'number';
  /** SI unit in which the answer is read back. */
  readonly unit?: string;
  /** Whether the question makes sense after the answers so far; and in words, for an option that does not. */
  readonly when?: { readonly holds: (answers: NewScenarioAnswers) => boolean; readonly words: string };
  /** Whether there is no scenario without an answer, after the answers so far. */
  readonly needed?: (answers: NewScenarioAnswers) => boolean;
}

/** What an answer may look like: an example, or the words to choose from. */
export function hintOf({ takes, example }: Question): string {
  return takes === 'word' ? example : `such as ${example}`;
}

/** The option that answers a question. */
export function flagOf({ key }: Pick<Question, 'key'>): string {
  return `--${key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
}
