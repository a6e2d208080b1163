import { escapeMarkup } from './plainText.ts';

/** Attributes of an element; undefined ones are left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** An SVG element; attributes are escaped, `children` is markup already. Numbers get at most two decimals. */
export function element(name: string, attributes: Attributes, children = ''): string {
  const list = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(
      ([key, value]) =>
        ` ${key}="${typeof value === 'number' ? shortNumber(value) : escapeMarkup(String(value))}"`,
    )
    .join('');
  return children === '' ? `<${name}${list}/>` : `<${name}${list}>${children}</${name}>`;
}

/** A text element; the text is escaped. */
export function textElement(text: string, attributes: Attributes): string {
  return element('text', attributes, escapeMarkup(text));
}

function shortNumber(value: number): string {
  return String(Math.round(value * 100) / 100);
}
