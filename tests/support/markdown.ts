import { readdirSync } from 'node:fs';
import path from 'node:path';
import { PROJECT } from './commandLine.ts';

/** Folders whose pages are not the project's own: packages, what is built, what commands write. */
const NOT_OURS = ['node_modules', 'build', 'reports'];

/** Every Markdown page of the project, its path from the project's folder with forward slashes, sorted. */
export function markdownPages(below = ''): string[] {
  return readdirSync(path.join(PROJECT, below), { withFileTypes: true })
    .flatMap((entry) => {
      const inside = below === '' ? entry.name : `${below}/${entry.name}`;
      if (entry.isFile()) return entry.name.endsWith('.md') ? [inside] : [];
      return entry.name.startsWith('.') || NOT_OURS.includes(entry.name) ? [] : markdownPages(inside);
    })
    .sort();
}

/** A fenced block. */
export interface CodeBlock {
  readonly language: string;
  readonly text: string;
  /** Line of the opening fence, from 1. */
  readonly line: number;
}

/** The fenced blocks of a Markdown text, in order. */
export function codeBlocks(markdown: string): CodeBlock[] {
  return [...markdown.matchAll(/^```(\w*)\n([\s\S]*?)^```$/gmu)].map((match) => ({
    language: match[1]!,
    text: match[2]!,
    line: markdown.slice(0, match.index).split('\n').length,
  }));
}

/** The text without its fenced blocks. */
function prose(markdown: string): string {
  return markdown.replace(/^```\w*\n[\s\S]*?^```$/gmu, '');
}

/** Targets of links and pictures outside fenced blocks. */
export function linkTargets(markdown: string): string[] {
  return [...prose(markdown).matchAll(/\]\(([^)\s]+)\)/gu)].map((match) => match[1]!);
}

/** Anchors that headings get on a page: lower case, punctuation dropped, spaces as hyphens. */
export function headingAnchors(markdown: string): string[] {
  return [...prose(markdown).matchAll(/^#+ (.+)$/gmu)].map((match) =>
    match[1]!
      .toLowerCase()
      .replace(/[^\p{L}\p{N} -]/gu, '')
      .replaceAll(' ', '-'),
  );
}
