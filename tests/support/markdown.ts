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

/** Words of `npm start …` lines in shell blocks, without what npm itself takes. */
export function startCommands(markdown: string): string[][] {
  return codeBlocks(markdown)
    .filter(({ language }) => language === 'sh')
    .flatMap(({ text }) => text.split('\n'))
    .filter((line) => /^npm start\b/u.test(line))
    .map((line) =>
      line
        .replace(/^npm start( --silent)?( --)?/u, '')
        .replace(/ #.*$/u, '')
        .split(/\s+/u)
        .filter((word) => word !== ''),
    );
}
