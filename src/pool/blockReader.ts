import { readSync } from 'node:fs';

/** Bytes read at once. */
const BLOCK = 65_536;
/** Blocks kept: runs that were finished in another order than they are read in lie this near to each other, or are rare. */
const KEPT = 64;
const LINE_FEED = 0x0a;

/** Reads single lines of an open file whose beginnings are known; memory does not grow with the file. */
export class BlockReader {
  readonly #file: number;
  /** The one used last stands last. */
  readonly #blocks = new Map<number, Buffer>();

  /**
   * @param file descriptor of an open file, which only grows
   */
  constructor(file: number) {
    this.#file = file;
  }

  /** The line that begins at a byte, without its line break. */
  line(offset: number): string {
    const pieces: Buffer[] = [];
    for (let at = offset; ; ) {
      const number = Math.floor(at / BLOCK);
      const block = this.#block(number);
      const from = at - number * BLOCK;
      const end = block.indexOf(LINE_FEED, from);
      pieces.push(block.subarray(from, end < 0 ? block.length : end));
      if (end >= 0 || block.length < BLOCK) return Buffer.concat(pieces).toString('utf8');
      at = (number + 1) * BLOCK;
    }
  }

  #block(number: number): Buffer {
    const kept = this.#blocks.get(number);
    if (kept !== undefined) {
      this.#blocks.delete(number);
      this.#blocks.set(number, kept);
      return kept;
    }
    const buffer = Buffer.allocUnsafe(BLOCK);
    let length = 0;
    while (length < BLOCK) {
      const read = readSync(this.#file, buffer, length, BLOCK - length, number * BLOCK + length);
      if (read === 0) break;
      length += read;
    }
    const block = buffer.subarray(0, length);
    // The last block may still grow.
    if (length === BLOCK) this.#blocks.set(number, block);
    for (const oldest of this.#blocks.keys()) {
      if (this.#blocks.size <= KEPT) break;
      this.#blocks.delete(oldest);
    }
    return block;
  }
}
