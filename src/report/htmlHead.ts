import { escapeMarkup } from './plainText.ts';

/** What the head of an HTML file says. */
export interface HtmlHeadOptions {
  readonly title: string;
  /** Name and version of the program. */
  readonly program: string;
  /** Style sheet. */
  readonly style: string;
  /** What the page may load beside its own style, as directives of a content security policy; left out: nothing at all. */
  readonly allowed?: string;
}

/** Everything before the body of an HTML file that needs nothing else: a content security policy forbids every request. */
export function htmlHead({ title, program, style, allowed }: HtmlHeadOptions): string {
  const policy = [
    "default-src 'none'",
    "style-src 'unsafe-inline'",
    ...(allowed === undefined ? [] : [allowed]),
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="generator" content="${escapeMarkup(program)}">
<title>${escapeMarkup(title)}</title>
<style>${style}</style>
</head>`;
}
