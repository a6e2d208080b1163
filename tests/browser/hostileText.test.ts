import { expect, it } from 'vitest';
import { plotsDrawn, reportPages } from '../support/reportPages.ts';
import { shortRun } from '../support/shortRun.ts';

const TITLE = '<script>alert(1)</script>"><img src=x onerror=alert(1)>';
const DESCRIPTION =
  '</script></style></svg><script>alert(2)</script><iframe src=javascript:alert(3)></iframe>';

const reports = reportPages(
  shortRun(
    ['title: Tea-withering belt, 7.5 kW', `title: ${JSON.stringify(TITLE)}`],
    ['description: >-\n', `description: >-\n  ${DESCRIPTION}\n`],
  ),
);

it('markup in title and description is shown as text and does nothing', async () => {
  const { page, complaints, requests } = await reports.open();
  await plotsDrawn(page);
  expect(await page.locator('h1').textContent()).toBe(TITLE);
  expect(await page.title()).toContain(TITLE);
  expect(await page.locator('main').textContent()).toContain(DESCRIPTION);
  expect(await page.locator('img, iframe, [onerror]').count()).toBe(0);
  // The figures' data, the plotting library and the report's own script.
  expect(await page.locator('script').count()).toBe(3);
  expect(complaints).toEqual([]);
  expect(requests).toEqual([]);
});
