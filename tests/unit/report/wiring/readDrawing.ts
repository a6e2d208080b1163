/** What stands in a drawing, read from its SVG text alone. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface ReadSymbol {
  readonly data: Readonly<Record<string, string>>;
  readonly at: Point;
  readonly ends: readonly Point[];
  /** Straight pieces of its lines and boxes, on the sheet. */
  readonly pieces: readonly (readonly [Point, Point])[];
}

export interface ReadText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly anchor: string;
  /** Words that are underlined. */
  readonly underlined: readonly string[];
}

export interface ReadDrawing {
  readonly width: number;
  readonly height: number;
  readonly wires: readonly (readonly Point[])[];
  readonly dots: readonly Point[];
  readonly symbols: readonly ReadSymbol[];
  readonly texts: readonly ReadText[];
}

export function readDrawing(svg: string): ReadDrawing {
  const [, , width = '', height = ''] = /viewBox="([^"]*)"/u.exec(svg)?.[1]?.split(' ') ?? [];
  return {
    width: Number(width),
    height: Number(height),
    wires: [...svg.matchAll(/<path class="wire" d="([^"]*)"/gu)].map(([, d = '']) => points(d)),
    dots: [...svg.matchAll(/<circle class="junction"([^>]*)>/gu)].map(([, list = '']) => {
      const { cx, cy } = attributes(list);
      return { x: Number(cx), y: Number(cy) };
    }),
    symbols: [...svg.matchAll(/<g (transform="[^>]*)>(.*?)<\/g>/gsu)].map(([, list = '', art = '']) =>
      readSymbol(list, art),
    ),
    texts: [...svg.matchAll(/<text ([^>]*)>(.*?)<\/text>/gsu)].map(([, list = '', content = '']) =>
      readText(list, content),
    ),
  };
}

function readSymbol(list: string, art: string): ReadSymbol {
  const all = attributes(list);
  const [x = 0, y = 0] = (/translate\(([^)]*)\)/u.exec(all.transform ?? '')?.[1] ?? '')
    .split(' ')
    .map(Number);
  const turned = (all.transform ?? '').includes('rotate(-90)');
  const onSheet = (point: Point): Point =>
    turned ? { x: x + point.y, y: y - point.x } : { x: x + point.x, y: y + point.y };
  const lines = [...art.matchAll(/<path d="([^"]*)"/gu)].flatMap(([, d = '']) =>
    d
      .split('M')
      .filter((run) => run !== '')
      .flatMap((run) => straight(points(`M${run}`))),
  );
  const boxes = [...art.matchAll(/<rect ([^>]*)>/gu)].flatMap(([, rect = '']) => {
    const { x: left, y: top, width, height } = attributes(rect);
    const [l, t, w, h] = [left, top, width, height].map(Number) as [number, number, number, number];
    return straight([
      { x: l, y: t },
      { x: l + w, y: t },
      { x: l + w, y: t + h },
      { x: l, y: t + h },
      { x: l, y: t },
    ]);
  });
  return {
    data: Object.fromEntries(
      Object.entries(all)
        .filter(([key]) => key.startsWith('data-') && key !== 'data-ends')
        .map(([key, value]) => [key.slice(5), value]),
    ),
    at: { x, y },
    ends: (all['data-ends'] ?? '')
      .split(' ')
      .filter((pair) => pair !== '')
      .map(pointOf),
    pieces: [...lines, ...boxes].map(([a, b]) => [onSheet(a), onSheet(b)] as const),
  };
}

function readText(list: string, content: string): ReadText {
  const all = attributes(list);
  return {
    text: plain(content.replace(/<[^>]*>/gu, '')),
    x: Number(all.x),
    y: Number(all.y),
    size: Number(all['font-size']),
    anchor: all['text-anchor'] ?? 'start',
    underlined: [...content.matchAll(/<tspan text-decoration="underline">(.*?)<\/tspan>/gu)].map(
      ([, word = '']) => word,
    ),
  };
}

function attributes(list: string): Record<string, string> {
  return Object.fromEntries(
    [...list.matchAll(/([\w-]+)="([^"]*)"/gu)].map(([, key = '', value = '']) => [key, value]),
  );
}

/** Ends of the straight and curved pieces of path data. */
function points(d: string): Point[] {
  return [...d.matchAll(/[ML](-?[\d.]+),(-?[\d.]+)|A [^A-Z]*? (-?[\d.]+),(-?[\d.]+)/gu)].map((found) => ({
    x: Number(found[1] ?? found[3]),
    y: Number(found[2] ?? found[4]),
  }));
}

function pointOf(pair: string): Point {
  const [x = Number.NaN, y = Number.NaN] = pair.split(',').map(Number);
  return { x, y };
}

function straight(list: readonly Point[]): (readonly [Point, Point])[] {
  return list.slice(1).map((to, i) => [list[i]!, to] as const);
}

function plain(text: string): string {
  return text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');
}
