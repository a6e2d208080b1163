/** Elements of a kind with their attributes and text. */
export function elementsOf(
  svg: string,
  name: string,
): { attributes: Record<string, string>; text: string }[] {
  return [...svg.matchAll(new RegExp(`<${name}\\b([^>]*?)(?:/>|>([^<]*)</${name}>)`, 'gu'))].map(
    ([, list, text]) => ({
      attributes: Object.fromEntries(
        [...list!.matchAll(/([\w-]+)="([^"]*)"/gu)].map(([, key, value]) => [key!, value!]),
      ),
      text: text ?? '',
    }),
  );
}

const value = (text: string) => Number(text.replace('−', '-').replaceAll('\u202F', ''));

/** From px to a value of the horizontal axis, read off the labels of the ticks, which all stand at one height. */
export function horizontalReading(svg: string): (px: number) => number {
  const texts = elementsOf(svg, 'text').filter(({ text }) => /^−?[\d.]+$/u.test(text));
  const heights = new Map<string, typeof texts>();
  for (const text of texts) {
    const key = text.attributes.y!;
    heights.set(key, [...(heights.get(key) ?? []), text]);
  }
  const row = [...heights.values()].sort((a, b) => b.length - a.length)[0]!;
  const [a, b] = [row[0]!, row.at(-1)!];
  const [xa, xb] = [Number(a.attributes.x), Number(b.attributes.x)];
  return (px) => value(a.text) + ((px - xa) / (xb - xa)) * (value(b.text) - value(a.text));
}
