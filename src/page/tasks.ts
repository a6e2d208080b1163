import type { Task } from './state.ts';

/** What the hand can do, in the order of the buttons. */
export const TASKS: readonly { readonly task: Task; readonly label: string }[] = [
  { task: 'push', label: 'Push buttons' },
  { task: 'change', label: 'Change' },
  { task: 'judge', label: 'Judge' },
  { task: 'class', label: 'Class' },
  { task: 'files', label: 'Files' },
];
