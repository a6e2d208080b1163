import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { apiDefects } from './apiDefects.ts';
import { COMPLETE, readMadeUp } from './madeUp.ts';
import { type Api, readApi } from './readApi.ts';
import { API_SETTINGS, PROJECT_FOLDER } from './settings.ts';
import { sourceDefects } from './sourceDefects.ts';

/** A day of this year, as a program writes it. */
const TODAY = new RegExp(`${new Date().getFullYear()}-\\d\\d-\\d\\d`, 'u');

describe('the documentation of the public names', () => {
  let api: Api;

  beforeAll(async () => {
    api = await readApi(API_SETTINGS);
  });

  it('says of everything what it is, in which unit, in which order and what it throws', () => {
    expect(apiDefects(api)).toEqual([]);
  });

  it('names the source of every published method', () => {
    expect(sourceDefects(api.project)).toEqual([]);
  });
});

// Of made-up names: what could lead away is a matter of the settings, and three hundred pages take too long.
it('its pages reach for no network and say nothing of where and when they were made', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'countertorque-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const { app, project, warnings } = await readMadeUp(folder, { complete: COMPLETE, other: COMPLETE });
  expect(warnings).toEqual([]);
  const pages = path.join(folder, 'pages');
  await app.generateDocs(project, pages);
  const names = readdirSync(pages, { recursive: true, encoding: 'utf8' })
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => /\.(?:html|css|js|svg)$/u.test(name));
  expect(names).toContain('functions/complete.mean.html');
  const texts = names.map((name) => ({ name, text: readFileSync(path.join(pages, name), 'utf8') }));
  const reaching = texts.filter(({ name, text }) =>
    name.endsWith('.html')
      ? /(?:href|src)="(?:https?:)?\/\//u.test(text)
      : /(?:url\(|import\s*|fetch\()["']?https?:/u.test(text),
  );
  expect(reaching.map(({ name }) => name)).toEqual([]);
  const telling = texts.filter(
    ({ text }) =>
      [folder, PROJECT_FOLDER, 'file://'].some((place) => text.includes(place)) || TODAY.test(text),
  );
  expect(telling.map(({ name }) => name)).toEqual([]);
});
