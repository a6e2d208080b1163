// What a worker thread starts with: plain JavaScript, because a thread does not inherit what loads TypeScript. Waiting at the top
// level keeps the pool from loading it by require().
import { bundled } from './bundled.js';

const { work } = await bundled('pool/work.ts');

export { work };
