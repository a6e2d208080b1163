import { execFile } from 'node:child_process';
import fs, { existsSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { hostname } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { build } from 'esbuild';
import { describe, expect, it, onTestFinished } from 'vitest';
import { lockFile } from '../../../src/pool/journalLock.ts';
import { workFolder } from '../../support/workFolder.ts';

const RACE = fileURLToPath(new URL('../../support/pool/lockRace.ts', import.meta.url));
const PROCESSES = 3;
/** ms that processes compete. */
const DURATION = 1000;
/** Above any number that a system gives. */
const DEAD = JSON.stringify({ process: 2 ** 30, computer: hostname() });

const fileIn = (folder: string) => path.join(folder, 'file');

/** Every link fails as on a disk that has none. */
function withoutLinks(): void {
  const { linkSync } = fs;
  onTestFinished(() => {
    fs.linkSync = linkSync;
    syncBuiltinESMExports();
  });
  fs.linkSync = () => {
    throw Object.assign(new Error('operation not permitted'), { code: 'EPERM' });
  };
  syncBuiltinESMExports();
}

describe('of several processes that want a lock at once', () => {
  it.each([
    ['and lift it', 'lifts'],
    ['and die with it', 'dies'],
  ])('again and again %s, one has it at a time', async (_, ending) => {
    const folder = workFolder();
    const script = path.join(folder, 'race.mjs');
    await build({ entryPoints: [RACE], bundle: true, platform: 'node', format: 'esm', outfile: script });
    const file = fileIn(folder);
    const one = () => promisify(execFile)(process.execPath, [script, file, String(DURATION), ending]);
    const said = (await Promise.all(Array.from({ length: PROCESSES }, one))).map(({ stdout }) =>
      JSON.parse(stdout),
    );
    for (const { taken, shared, odd } of said) {
      expect(shared, `${taken} times taken`).toBe(0);
      expect(odd).toBe('');
    }
    // On a busy machine one of them may not have had its turn; but the lock must have gone from hand to hand.
    expect(said.filter(({ taken }) => taken > 0).length).toBeGreaterThan(1);
    // Nothing is left but the lock of the last that died.
    const left = readdirSync(folder).filter((name) => name !== 'race.mjs');
    expect(left).toEqual(ending === 'lifts' ? [] : ['file.lock']);
  });
});

describe('a lock', () => {
  it('that another computer holds is refused with what to do', () => {
    const file = fileIn(workFolder());
    writeFileSync(`${file}.lock`, JSON.stringify({ process: 17, computer: 'elsewhere' }));
    expect(() => lockFile(file)).toThrow(
      /process 17 on "elsewhere" is at work on it; .*cannot be seen from here; if it does not, remove .*file\.lock/u,
    );
  });

  it('that was cut off a moment ago may still be written and is left alone', () => {
    const file = fileIn(workFolder());
    writeFileSync(`${file}.lock`, '');
    expect(() => lockFile(file)).toThrow(/another process is at work on it/u);
    const minuteAgo = Date.now() / 1000 - 60;
    utimesSync(`${file}.lock`, minuteAgo, minuteAgo);
    lockFile(file)();
    expect(existsSync(`${file}.lock`)).toBe(false);
  });

  it('is taken over although a process died while it took it over', () => {
    const folder = workFolder();
    const file = fileIn(folder);
    writeFileSync(`${file}.lock`, DEAD);
    writeFileSync(`${file}.lock.turn`, DEAD);
    const lift = lockFile(file);
    expect(() => lockFile(file)).toThrow(/this process is at work on it/u);
    expect(readdirSync(folder)).toEqual(['file.lock']);
    lift();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('is not taken over while another process takes it over', () => {
    const file = fileIn(workFolder());
    writeFileSync(`${file}.lock`, DEAD);
    writeFileSync(`${file}.lock.turn`, JSON.stringify({ process: process.ppid, computer: hostname() }));
    expect(() => lockFile(file)).toThrow(`process ${process.ppid} is at work on it`);
    expect(readFileSync(`${file}.lock`, 'utf8')).toBe(DEAD);
  });

  it('that somebody removed and another process took is not lifted', () => {
    const file = fileIn(workFolder());
    const lift = lockFile(file);
    writeFileSync(`${file}.lock`, DEAD);
    lift();
    expect(readFileSync(`${file}.lock`, 'utf8')).toBe(DEAD);
  });

  it('is kept and taken over on a disk without links, too', () => {
    withoutLinks();
    const folder = workFolder();
    const file = fileIn(folder);
    writeFileSync(`${file}.lock`, DEAD);
    const lift = lockFile(file);
    expect(JSON.parse(readFileSync(`${file}.lock`, 'utf8'))).toEqual({
      process: process.pid,
      computer: hostname(),
    });
    expect(() => lockFile(file)).toThrow(/this process is at work on it/u);
    lift();
    expect(readdirSync(folder)).toEqual([]);
  });
});
