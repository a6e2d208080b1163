const COMBINING = /\p{Mn}|\p{Me}|\p{Cf}/u;
/** Characters terminals draw two columns wide: East Asian wide and full-width ranges, and emoji. */
const WIDE =
  /[\u1100-\u115F\u2E80-\u303E\u3041-\u33FF\u3400-\u4DBF\u4E00-\u9FFF\uA000-\uA4CF\uA960-\uA97F\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6]|[\u{1F000}-\u{1FAFF}]|[\u{20000}-\u{3FFFD}]|\p{Emoji_Presentation}/u;

/** Columns a string takes in a terminal: combining marks 0, East Asian wide and emoji 2, the rest 1. */
export function displayWidth(text: string): number {
  let width = 0;
  for (const character of text) width += characterWidth(character);
  return width;
}

/** Cuts text to at most `width` columns, ending in "…" where something was cut. */
export function cutToWidth(text: string, width: number): string {
  if (displayWidth(text) <= width) return text;
  let used = 0;
  let kept = '';
  for (const character of text) {
    const next = characterWidth(character);
    if (used + next > width - 1) break;
    used += next;
    kept += character;
  }
  return `${kept}…`;
}

/** Pads text with spaces to `width` columns; negative width pads on the left. Longer text is cut. */
export function padToWidth(text: string, width: number): string {
  const cut = cutToWidth(text, Math.abs(width));
  const space = ' '.repeat(Math.abs(width) - displayWidth(cut));
  return width < 0 ? space + cut : cut + space;
}

/** Breaks text at spaces into lines of at most `width` columns; a longer word is broken where it must. */
export function wrapToWidth(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/ +/u)) {
    let rest = word;
    if (line !== '' && displayWidth(line) + 1 + displayWidth(rest) > width) {
      lines.push(line);
      line = '';
    }
    while (displayWidth(rest) > width) {
      const head = headOfWidth(rest, width);
      lines.push(head);
      rest = rest.slice(head.length);
    }
    line = line === '' ? rest : `${line} ${rest}`;
  }
  if (line !== '' || lines.length === 0) lines.push(line);
  return lines;
}

function headOfWidth(text: string, width: number): string {
  let used = 0;
  let head = '';
  for (const character of text) {
    used += characterWidth(character);
    if (used > width) break;
    head += character;
  }
  return head;
}

function characterWidth(character: string): number {
  if (COMBINING.test(character)) return 0;
  return WIDE.test(character) ? 2 : 1;
}
