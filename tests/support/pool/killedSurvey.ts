import { runSurvey } from '../../../src/pool/index.ts';
import { TEST_RUNNER, testSurvey } from './testSurvey.ts';

/** A process that makes a slow survey of so many runs in a journal, to be killed. */
const [journal, count, slow] = process.argv.slice(2);
await runSurvey(testSurvey(Number(count), { slow: Number(slow) }), {
  workers: 2,
  journal: journal!,
  runner: TEST_RUNNER,
});
