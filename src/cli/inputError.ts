export { reasonOf } from '../pool/reasonOf.ts';

/** Something about the command or the file that the person at the keyboard can put right. */
export class InputError extends Error {
  override readonly name = 'InputError';
}
