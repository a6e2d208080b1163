// What a worker thread starts with: plain JavaScript, because a thread does not inherit what loads TypeScript. Waiting at the top
// level keeps the pool from loading it by require(): as CommonJS modules what stands below would run slower.
import { register } from 'tsx/esm/api';

register();
const { work } = await import('./work.ts');

export { work };
