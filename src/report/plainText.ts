/** Marks that reorder text on screen: a title must not be able to rewrite the line it stands in. */
const BIDI_CONTROLS = /[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/gu;
const LINE_BREAKS = /[\r\n\t\v\f\u0085\u2028\u2029]+/gu;
const CONTROLS = /\p{Cc}/gu;
/** Not allowed in XML 1.0, or not a character at all. */
const NOT_CHARACTERS = /[\p{Surrogate}\uFFFE\uFFFF]/gu;

/**
 * Makes text from a scenario fit to be shown on one line: line breaks become spaces; control characters,
 * direction overrides and byte order marks go; lone surrogates become U+FFFD. It does not escape.
 */
export function cleanText(text: string): string {
  return text
    .replace(LINE_BREAKS, ' ')
    .replace(CONTROLS, '')
    .replace(BIDI_CONTROLS, '')
    .replace(/\uFEFF/gu, '')
    .replace(NOT_CHARACTERS, '\uFFFD')
    .trim();
}

/** Escapes cleaned text for element content and quoted attributes of HTML and SVG. */
export function escapeMarkup(text: string): string {
  return cleanText(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

/**
 * Neutralises text for the plotting library, which reads a few HTML tags, entities and `%{…}` templates in labels:
 * the tag and entity characters become entities, which it prints as themselves.
 */
export function escapePlotText(text: string): string {
  return cleanText(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('%{', '% {');
}

/**
 * Serialises a value for a `<script type="application/json">` element: no `<` is left that could end it.
 * NaN and infinities become null, as JSON has neither.
 */
export function jsonForScript(value: object): string {
  return JSON.stringify(value)
    .replaceAll('<', '\\u003c')
    .replaceAll('\u2028', '\\u2028')
    .replaceAll('\u2029', '\\u2029');
}
