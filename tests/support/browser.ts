import { accessSync, constants } from 'node:fs';
import path from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/** Where Chromium, Chrome and Edge are installed as a rule. */
function usualPlaces(): string[] {
  const { env, platform } = process;
  if (platform === 'darwin')
    return [
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
      '/Applications/Chromium.app/Contents/MacOS/Chromium',
      '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    ];
  if (platform === 'win32')
    return [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].flatMap((folder) =>
      folder === undefined
        ? []
        : [
            path.join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe'),
            path.join(folder, 'Chromium', 'Application', 'chrome.exe'),
            path.join(folder, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
          ],
    );
  return [
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/usr/bin/microsoft-edge',
    '/snap/bin/chromium',
  ];
}

function isExecutable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Path of a browser: the environment variable CHROMIUM, or the first of the usual places.
 *
 * @throws Error that says how to install one
 */
export function findBrowser(): string {
  const stated = process.env.CHROMIUM;
  if (stated !== undefined && stated !== '') {
    if (isExecutable(stated)) return stated;
    throw new Error(`CHROMIUM is ${stated}, which is no program; expected the path of Chromium or Chrome`);
  }
  const found = usualPlaces().find(isExecutable);
  if (found === undefined)
    throw new Error(
      'The browser tests need Chromium, Chrome or Edge and found none. Install one (Debian: apt-get install ' +
        'chromium; Fedora: dnf install chromium; macOS: brew install --cask chromium; Windows: Edge is there as a ' +
        'rule) or set the environment variable CHROMIUM to its path.',
    );
  return found;
}

/** Starts a browser that asks nothing of the network by itself. */
export function launchBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: findBrowser(),
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
    timeout: 120_000,
  });
}
