import { isMap, isNode, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import { type Path, valueAt } from '../place.ts';
import { type Plain, writeFlow, writePair } from './writeFlow.ts';
import { endOf, lineStart, nextLine, startOf, type YamlText } from './yamlText.ts';

/**
 * Puts a value into a text and leaves every other character where it is. Groups on the way that are missing are made.
 *
 * @returns the changed text
 */
export function setIn(yaml: YamlText, path: Path, value: Plain): string {
  let node: Node = yaml.contents;
  for (const [index, step] of path.entries()) {
    if (isSeq(node) && typeof step === 'number' && isNode(node.items[step])) {
      node = node.items[step];
    } else if (isMap(node)) {
      const pair = pairOf(node, step);
      if (pair === undefined) return insertPair(yaml, node, String(step), nest(value, path.slice(index + 1)));
      if (!isNode(pair.value)) return yaml.text;
      node = pair.value;
    } else {
      return replace(yaml, node, nest(value, path.slice(index)));
    }
  }
  return replace(yaml, node, value);
}

/** Takes a key with its value out of a text; the text as it is where the key is not there. */
export function removeIn(yaml: YamlText, path: Path): string {
  const map = nodeAt(yaml, path.slice(0, -1));
  const pair = isMap(map) ? pairOf(map, path.at(-1)!) : undefined;
  return isMap(map) && pair !== undefined ? removePair(yaml.text, map, map.items.indexOf(pair)) : yaml.text;
}

/** Gives a key another name at the same place; the text as it is where the key is not there. */
export function renameIn(yaml: YamlText, path: Path, name: string): string {
  const map = nodeAt(yaml, path.slice(0, -1));
  const key = isMap(map) ? pairOf(map, path.at(-1)!)?.key : undefined;
  return isNode(key) ? splice(yaml.text, startOf(key), endOf(key), writeFlow(name, yaml.json)) : yaml.text;
}

/**
 * Puts a list into a text. Entries at its beginning that are as before stay untouched, with their comments.
 *
 * @param items all entries, at least one
 */
export function setList(yaml: YamlText, path: Path, items: readonly Plain[]): string {
  const list = nodeAt(yaml, path);
  if (!isSeq(list) || list.items.length === 0 || !list.items.every(isNode)) return setIn(yaml, path, items);
  const before = valueAt(yaml.data, path) as readonly unknown[];
  const changed = items.findIndex((item, at) => JSON.stringify(item) !== JSON.stringify(before[at]));
  const kept = changed < 0 ? Math.min(items.length, before.length) : changed;
  if (kept === before.length && kept === items.length) return yaml.text;
  const written = items.slice(kept).map((item) => writeFlow(item, yaml.json));
  return list.flow === true
    ? setFlowTail(yaml.text, list as YAMLSeq<Node>, kept, written)
    : setBlockTail(yaml.text, list as YAMLSeq<Node>, kept, written);
}

function setFlowTail(text: string, list: YAMLSeq<Node>, kept: number, written: readonly string[]): string {
  const end = endOf(list.items.at(-1)!);
  if (kept === 0) return splice(text, startOf(list.items[0]!), end, written.join(', '));
  return splice(text, endOf(list.items[kept - 1]!), end, written.map((one) => `, ${one}`).join(''));
}

function setBlockTail(text: string, list: YAMLSeq<Node>, kept: number, written: readonly string[]): string {
  const dash = text.lastIndexOf('-', startOf(list.items[0]!) - 1);
  const indent = text.slice(lineStart(text, dash), dash).replace(/\S/gu, ' ');
  const from = kept === 0 ? lineStart(text, dash) : nextLine(text, endOf(list.items[kept - 1]!));
  const to = Math.max(from, nextLine(text, endOf(list.items.at(-1)!)));
  return spliceLines(
    text,
    from,
    to,
    written.map((one) => `${indent}- ${one}`),
  );
}

function replace(yaml: YamlText, node: Node, value: Plain): string {
  const start = startOf(node);
  const written = writeFlow(value, yaml.json);
  // Where nothing stands behind the colon, the value needs its space.
  return splice(yaml.text, start, endOf(node), yaml.text[start - 1] === ':' ? ` ${written}` : written);
}

function insertPair({ text, json }: YamlText, map: YAMLMap, key: string, value: Plain): string {
  const written = writePair(key, value, json);
  const first = map.items[0]?.key;
  if (map.flow === true) {
    if (!isNode(first)) return splice(text, startOf(map), endOf(map), `{ ${written} }`);
    const end = endOfPair(map.items.at(-1)!);
    return splice(text, end, end, `, ${written}`);
  }
  const at = startOf(first as Node);
  const indent = text.slice(lineStart(text, at), at).replace(/\S/gu, ' ');
  const next = nextLine(text, endOf(map));
  return spliceLines(text, next, next, [`${indent}${written}`]);
}

function removePair(text: string, map: YAMLMap, index: number): string {
  const pair = map.items[index]!;
  const start = startOf(pair.key as Node);
  const end = endOfPair(pair);
  if (map.items.length === 1)
    return map.flow === true ? splice(text, startOf(map), endOf(map), '{}') : splice(text, start, end, '{}');
  const next = map.items[index + 1]?.key;
  const alone = text.slice(lineStart(text, start), start).trim() === '';
  if (map.flow !== true && alone) return splice(text, lineStart(text, start), nextLine(text, end), '');
  if (index === 0) return splice(text, start, startOf(next as Node), '');
  return splice(text, endOfPair(map.items[index - 1]!), end, '');
}

function endOfPair({ key, value }: Pair): number {
  return endOf((isNode(value) ? value : key) as Node);
}

function nodeAt(yaml: YamlText, path: Path): Node | undefined {
  let node: unknown = yaml.contents;
  for (const step of path) {
    if (isMap(node)) node = pairOf(node, step)?.value;
    else if (isSeq(node) && typeof step === 'number') node = node.items[step];
    else return undefined;
  }
  return isNode(node) ? node : undefined;
}

function pairOf(map: YAMLMap, step: string | number): Pair | undefined {
  return map.items.find(
    ({ key }) => isNode(key) && String((key as { value?: unknown }).value) === String(step),
  );
}

/** A value inside groups of one key each. */
function nest(value: Plain, path: Path): Plain {
  return path.reduceRight<Plain>((inner, key) => ({ [String(key)]: inner }), value);
}

function splice(text: string, from: number, to: number, inserted: string): string {
  return text.slice(0, from) + inserted + text.slice(to);
}

/** Puts whole lines in place of whole lines, with the line ends of the text. */
function spliceLines(text: string, from: number, to: number, lines: readonly string[]): string {
  const end = text.includes('\r\n') ? '\r\n' : '\n';
  // The last line of a text may lack its end.
  const opening = from > 0 && text[from - 1] !== '\n' && lines.length > 0 ? end : '';
  return splice(text, from, to, opening + lines.map((line) => line + end).join(''));
}
