/** A node of a JSON Schema, as far as the pages read it. */
export interface SchemaNode {
  readonly description?: unknown;
  readonly properties?: unknown;
  readonly required?: unknown;
  readonly items?: unknown;
  readonly anyOf?: unknown;
  readonly oneOf?: unknown;
  readonly enum?: unknown;
  readonly const?: unknown;
  readonly type?: unknown;
  readonly pattern?: unknown;
  readonly minimum?: unknown;
  readonly multipleOf?: unknown;
  readonly maximum?: unknown;
  readonly default?: unknown;
  readonly examples?: unknown;
}

/** A key of a file that a person writes. */
export interface SchemaKey {
  /** Keys joined by dots; `[]` for the entries of a list. */
  readonly path: string;
  /** What may be written. */
  readonly what: string;
  readonly meaning: string;
  /** `needed`, or what holds where it is left out; empty: the meaning says it, or the part is switched off or not known. */
  readonly leftOut: string;
  /** As written in YAML; empty for a group. */
  readonly example: string;
  /** Keys stand below it. */
  readonly isGroup: boolean;
}

const isNode = (value: unknown): value is SchemaNode =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const nodes = (value: unknown): readonly SchemaNode[] => (Array.isArray(value) ? value.filter(isNode) : []);
const textOf = (value: unknown): string => (typeof value === 'string' ? value : '');

/** The keys of a group, those below each right after it. */
export function keysOf(group: SchemaNode, path: string): SchemaKey[] {
  const needed = Array.isArray(group.required) ? group.required : [];
  return Object.entries(isNode(group.properties) ? group.properties : {}).flatMap(([name, node]) =>
    isNode(node) ? keyAndBelow(node, path === '' ? name : `${path}.${name}`, needed.includes(name)) : [],
  );
}

function keyAndBelow(node: SchemaNode, path: string, needed: boolean): SchemaKey[] {
  const below = keysBelow(node, path);
  const [meaning, form] = splitDescription(textOf(node.description));
  const examples = examplesOf(node);
  const left = node.default;
  const own: SchemaKey = {
    path,
    what: below.length > 0 ? groupWords(node) : (form ?? whatOf(node)),
    meaning,
    leftOut: needed ? 'needed' : left === undefined ? '' : inYaml(left),
    example: below.length > 0 || examples.length === 0 ? '' : inYaml(examples[0]),
    isGroup: below.length > 0,
  };
  return [own, ...below];
}

/** Keys of a group, of the groups in a list, and of the groups a key may be instead of a word. */
function keysBelow(node: SchemaNode, path: string): SchemaKey[] {
  if (isNode(node.properties)) return keysOf(node, path);
  if (isNode(node.items)) return keysBelow(node.items, `${path}[]`);
  const seen = new Set<string>();
  return variants(node).flatMap((variant) => {
    const same = JSON.stringify(isNode(variant.items) ? variant.items : variant);
    if (seen.has(same)) return [];
    seen.add(same);
    return withKind(variant, keysBelow(variant, path), path);
  });
}

function variants(node: SchemaNode): readonly SchemaNode[] {
  return [...nodes(node.anyOf), ...nodes(node.oneOf)];
}

/** A group that one of its keys tells apart by a fixed word gives that word to all its keys: "load.torque (fan).atSpeed". */
function withKind(variant: SchemaNode, keys: readonly SchemaKey[], path: string): SchemaKey[] {
  const [, node] = Object.entries(variant.properties ?? {}).find(([name]) => name === 'kind') ?? [];
  const kind = isNode(node) ? node.const : undefined;
  if (typeof kind !== 'string') return [...keys];
  return keys.map((key) => {
    const isKind = key.path.endsWith('.kind');
    return {
      ...key,
      path: `${path} (${kind})${key.path.slice(path.length)}`,
      meaning: isKind ? textOf(variant.description) : key.meaning,
      example: isKind ? kind : key.example,
    };
  });
}

/** The description says what a key means, then what form it has: "Supply frequency. A number with its unit (Hz, kHz), from …". */
function splitDescription(description: string): readonly [string, string | null] {
  const found =
    /^(.*?)\.* (A number with its unit|A plain number|A whole number|An even whole number)(.*)\.$/su.exec(
      description,
    );
  if (found === null) return [description, null];
  const form = `${found[2]}${found[3]}`
    .replace(/, such as `[^`]*`/u, '')
    .replace(/; none: it is stated.*$/u, '; or `none`: no limit applies')
    .replace(/^An? (number with) its (unit) \(([^)]*)\),/u, '$1 $2 ($3),')
    .replace(/^An? /u, '');
  return [`${found[1]}.`, form];
}

function groupWords(node: SchemaNode): string {
  if (isNode(node.properties)) return 'group';
  if (node.type === 'array') return 'list of groups';
  const words = variants(node).map((variant) =>
    keysBelow(variant, '').length > 0 ? groupWords(variant) : whatOf(variant),
  );
  return [...new Set(words)].join(', or ');
}

function whatOf(node: SchemaNode): string {
  if (Array.isArray(node.enum)) return node.enum.map((word) => `\`${word}\``).join(', ');
  if (node.const !== undefined) return `\`${node.const}\``;
  const description = textOf(node.description);
  if (node.pattern !== undefined && description.includes('YYYY-MM-DD')) return 'day as YYYY-MM-DD';
  if (node.pattern !== undefined) return 'number with unit';
  if (node.type === 'array') return `list: ${isNode(node.items) ? whatOf(node.items) : 'values'}`;
  if (node.type === 'string') return 'text';
  if (node.multipleOf === 1) return `whole number from ${node.minimum} to ${node.maximum}`;
  if (node.type === 'boolean') return '`true`, `false`';
  if (typeof node.type === 'string') return node.type;
  return [...new Set(variants(node).map(whatOf))].join(', or ');
}

/** Its own; those of the first form that has some; or the one word it can be. */
function examplesOf(node: SchemaNode): readonly unknown[] {
  if (Array.isArray(node.examples)) return node.examples;
  if (node.const !== undefined) return [node.const];
  return variants(node).flatMap(examplesOf);
}

/** A value as a person writes it on one line. */
export function inYaml(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inYaml).join(', ')}]`;
  if (isNode(value))
    return `{ ${Object.entries(value)
      .map(([key, one]) => `${key}: ${inYaml(one)}`)
      .join(', ')} }`;
  return String(value);
}
