import type { Document, Node, Pair, YAMLMap } from 'yaml';
import { isAlias, isMap, isNode, isScalar, isSeq, LineCounter, parseDocument, visit } from 'yaml';
import { checkText } from './checkText.ts';
import type { Locate, Path, Place } from './place.ts';
import type { PlacedFault } from './placedFault.ts';

/** What a text says, with every fault of its notation. */
export interface YamlReading {
  /** Plain data, or null where the text cannot be turned into any. */
  readonly data: { readonly value: unknown; readonly locate: Locate } | null;
  readonly faults: readonly PlacedFault[];
}

/**
 * Reads YAML or JSON text into plain data that knows its lines.
 *
 * Refuses what a scenario does not need and a hostile file would use: size, depth, anchors, aliases, tags, several
 * documents, duplicate keys.
 *
 * @param source the text; a byte order mark and either kind of line end are accepted
 */
export function readYaml(source: string): YamlReading {
  return readMarkless(source.replace(/^\uFEFF/, ''));
}

function readMarkless(source: string): YamlReading {
  const text = checkText(source);
  if (text !== null) return { data: null, faults: [text] };

  const lines = new LineCounter();
  // Duplicate keys are looked for below: the library compares every key with every other.
  const document = parseDocument(source, {
    lineCounter: lines,
    prettyErrors: false,
    uniqueKeys: false,
    stringKeys: true,
    version: '1.2',
  });
  const placeOf = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { line, column: col };
  };
  const broken = [...document.errors, ...document.warnings].map((error): PlacedFault => {
    const place = placeOf(error.pos[0]);
    const words = { message: error.message, expected: 'valid YAML or JSON' };
    if (error.code === 'MULTIPLE_DOCS') {
      const message = 'a second document begins here';
      return { code: 'multipleDocuments', message, expected: 'one scenario in a file', place };
    }
    if (error.code === 'TAG_RESOLVE_FAILED') {
      return { code: 'yamlFeature', message: error.message, expected: 'plain values without tags', place };
    }
    if (/Nested mappings are not allowed/.test(error.message)) {
      const message = 'a second colon stands in this line';
      return { code: 'syntax', message, expected: 'text that contains a colon in "quotes"', place };
    }
    if (error.code === 'TAB_AS_INDENT')
      return { code: 'syntax', ...words, expected: 'spaces, no tabs', place };
    return { code: 'syntax', ...words, place };
  });
  if (document.directives?.yaml.version !== '1.2') {
    const words = { message: 'asks for another version of YAML', expected: 'YAML 1.2 (leave the line out)' };
    broken.push({ code: 'yamlFeature', ...words, place: placeOf(0) });
  }
  if (broken.length > 0) return { data: null, faults: broken };
  if (document.contents === null || (isScalar(document.contents) && document.contents.value === null)) {
    const words = {
      message: 'the file is empty',
      expected: 'a scenario with title, supply, machine, load, actions',
    };
    return { data: null, faults: [{ code: 'empty', ...words, place: placeOf(0) }] };
  }
  const unwanted = findUnwanted(document, placeOf);
  if (unwanted.some((fault) => fault.code === 'yamlFeature')) return { data: null, faults: unwanted };
  const pairOf = pairFinder();
  const locate: Locate = (path, what) => placeOf(findOffset(document.contents, path, what, pairOf));
  return { data: { value: document.toJS({ maxAliasCount: 0 }), locate }, faults: unwanted };
}

/** Anchors, aliases, tags and repeated keys. */
function findUnwanted(document: Document.Parsed, placeOf: (offset: number) => Place): PlacedFault[] {
  const faults: PlacedFault[] = [];
  const place = (node: Node) => placeOf(node.range?.[0] ?? 0);
  visit(document, {
    Node(_, node) {
      if (isAlias(node)) {
        const words = { message: `refers to an anchor (*${node.source})`, expected: 'the value itself' };
        faults.push({ code: 'yamlFeature', ...words, place: place(node) });
      } else if (node.anchor !== undefined) {
        const words = { message: `carries an anchor (&${node.anchor})`, expected: 'the value without it' };
        faults.push({ code: 'yamlFeature', ...words, place: place(node) });
      } else if (node.tag !== undefined) {
        const words = { message: `carries a tag (${node.tag})`, expected: 'the value without it' };
        faults.push({ code: 'yamlFeature', ...words, place: place(node) });
      }
    },
    Map(_, map) {
      const seen = new Set<string>();
      for (const { key } of map.items) {
        const name = keyName(key);
        if (seen.has(name) && isNode(key)) {
          const message = `the key ${JSON.stringify(name.slice(0, 60))} stands twice`;
          faults.push({
            code: 'duplicateKey',
            message,
            expected: 'each key once in a group',
            place: place(key),
          });
        }
        seen.add(name);
      }
    },
  });
  return faults;
}

type PairOf = (map: YAMLMap, name: string) => Pair | undefined;

/** Looks pairs up in an index made once for each group: a hostile file may ask for thousands of places in one. */
function pairFinder(): PairOf {
  const indexes = new Map<YAMLMap, Map<string, Pair>>();
  return (map, name) => {
    const index = indexes.get(map) ?? new Map(map.items.map((pair) => [keyName(pair.key), pair]));
    indexes.set(map, index);
    return index.get(name);
  };
}

/** Offset of a value or its key; where the path ends early, of the key of the last group on it. */
function findOffset(contents: unknown, path: Path, what: 'key' | 'value', pairOf: PairOf): number {
  let node: unknown = contents;
  let keyOffset = offsetOf(contents);
  let stepsTaken = 0;
  for (const step of path) {
    if (isMap(node)) {
      const pair = pairOf(node, String(step));
      if (pair === undefined) break;
      keyOffset = offsetOf(pair.key);
      node = pair.value;
    } else if (isSeq(node) && typeof step === 'number' && isNode(node.items[step])) {
      node = node.items[step];
      keyOffset = offsetOf(node);
    } else {
      break;
    }
    stepsTaken += 1;
  }
  const stands = stepsTaken === path.length && what === 'value' && isNode(node);
  return stands ? offsetOf(node) : keyOffset;
}

function keyName(key: unknown): string {
  return isScalar(key) ? String(key.value) : String(key);
}

function offsetOf(node: unknown): number {
  return isNode(node) ? (node.range?.[0] ?? 0) : 0;
}
