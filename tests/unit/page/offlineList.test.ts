import { describe, expect, it } from 'vitest';
import { offlineFilesOf } from '../../../src/page/build/offlineList.ts';

const BUILT = [
  { name: 'index.html', content: '<p>' },
  { name: 'assets/b.js', content: 'b' },
  { name: 'assets/a.css', content: new Uint8Array([1, 2]) },
  { name: 'serviceWorker.js', content: 'w' },
];

describe('the list of files to keep', () => {
  it('names every file beside the service worker, and the page by its folder', () => {
    expect(offlineFilesOf(BUILT).files).toEqual(['./assets/a.css', './assets/b.js', './']);
  });

  it('has a version that does not depend on the order of the files', () => {
    expect(offlineFilesOf(BUILT.toReversed())).toEqual(offlineFilesOf(BUILT));
  });

  it.each([
    ['a byte changes', { name: 'assets/a.css', content: new Uint8Array([1, 3]) }],
    ['a name changes', { name: 'assets/c.css', content: new Uint8Array([1, 2]) }],
  ])('has another version when %s', (_what, changed) => {
    const other = BUILT.map((file) => (file.name === 'assets/a.css' ? changed : file));
    expect(offlineFilesOf(other).version).not.toBe(offlineFilesOf(BUILT).version);
  });

  it('has another version when bytes move from one file to another', () => {
    const version = (...files: readonly (readonly [string, string])[]) =>
      offlineFilesOf(files.map(([name, content]) => ({ name, content }))).version;
    expect(version(['a', 'x'], ['b', 'yz'])).not.toBe(version(['a', 'xy'], ['b', 'z']));
    expect(version(['a', 'x'], ['b', 'y'])).not.toBe(version(['a', 'xb\0y']));
  });
});
