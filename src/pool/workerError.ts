/** The worker threads cannot make runs at all. */
export class WorkerError extends Error {
  override readonly name = 'WorkerError';

  /**
   * @param reason in words
   */
  constructor(reason: string) {
    super(`the worker threads cannot work: ${reason}`);
  }
}
