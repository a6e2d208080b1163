import {
  Comment,
  type DeclarationReflection,
  type ParameterReflection,
  type ProjectReflection,
  ReflectionKind,
  type SignatureReflection,
  type SomeType,
} from 'typedoc';
import { type Holds, numbersIn } from './numbersIn.ts';
import { placeOf } from './placeOf.ts';
import { nameShape, nameUnit } from './words.ts';

/** Names that say all there is to say about a text or a value of their own. */
const SAYS_ALL =
  /^(?:title|description|name|label|text|key|kind|message|path|field|metric|fileName|tag|schemaVersion|code|reason|words|phase|contactor|(?:is|has)[A-Z]\w*)$/u;

/** What lacks words among everything that is exported: names, members, parameters, results, units, the order of arrays. */
export function wordDefects(project: ProjectReflection): string[] {
  const found: string[] = [];
  const declared = project.getReflectionsByKind(ReflectionKind.SomeModule);
  const exported = [project, ...declared].flatMap((owner) =>
    owner.isDeclaration() || owner.isProject() ? (owner.children ?? []) : [],
  );
  for (const name of exported)
    if (!name.kindOf([ReflectionKind.SomeModule, ReflectionKind.Reference])) exportDefects(name, found);
  return [...new Set(found)];
}

function exportDefects(reflection: DeclarationReflection, found: string[]): void {
  if (reflection.signatures !== undefined) {
    for (const signature of reflection.signatures) signatureDefects(signature, '', found);
    return;
  }
  const words = wordsOf(reflection.comment);
  if (words === '') found.push(`${reflection.name} has no doc comment`);
  if (reflection.kindOf([ReflectionKind.Variable, ReflectionKind.TypeAlias]))
    numberDefects(placeOf(reflection), numbersIn(reflection.type), words, found);
  membersOf(reflection, words, found);
}

/** Members of an interface, a class or an object without a name, however deep it stands in a type; `around`: words about the whole. */
function membersOf(reflection: DeclarationReflection, around: string, found: string[]): void {
  for (const member of reflection.children ?? []) memberDefects(member, around, found);
  for (const object of objectsIn(reflection.type, around))
    membersOf(object.declaration, object.around, found);
  if (reflection.kindOf(ReflectionKind.TypeLiteral))
    for (const signature of reflection.signatures ?? []) signatureDefects(signature, around, found);
}

function memberDefects(member: DeclarationReflection, around: string, found: string[]): void {
  if (member.flags.isExternal || member.flags.isInherited) return;
  if (member.kindOf(ReflectionKind.Constructor)) return;
  if (member.signatures !== undefined) {
    for (const signature of member.signatures) signatureDefects(signature, '', found);
    return;
  }
  const type = member.type ?? member.getSignature?.type;
  const own = wordsOf(member.comment) || wordsOf(member.getSignature?.comment);
  const words = own || sentencesWith(member.name, around);
  const holds = numbersIn(type);
  const place = placeOf(member);
  if (holds.plain && words === '' && !SAYS_ALL.test(member.name) && !isMark(type))
    found.push(`${place} has no words`);
  const counts = countsByName(member.name);
  numberDefects(place, holds, [words, forAll(around), counts].join(' '), found);
  for (const object of objectsIn(type, own || around)) membersOf(object.declaration, object.around, found);
}

function signatureDefects(signature: SignatureReflection, around: string, found: string[]): void {
  const place = placeOf(signature);
  const words = wordsOf(signature.comment) || around;
  if (words === '') found.push(`${place} has no doc comment`);
  for (const parameter of signature.parameters ?? []) parameterDefects(parameter, words, found);
  const { type } = signature;
  const returned = Comment.combineDisplayParts(signature.comment?.getTag('@returns')?.content) || words;
  numberDefects(`the result of ${place}`, numbersIn(type), returned, found);
  for (const object of objectsIn(type, words)) membersOf(object.declaration, object.around, found);
}

function parameterDefects(parameter: ParameterReflection, around: string, found: string[]): void {
  const words = wordsOf(parameter.comment) || sentencesWith(parameter.name, around);
  const holds = numbersIn(parameter.type);
  const place = placeOf(parameter);
  if (holds.plain && words === '' && !isMark(parameter.type)) found.push(`${place} has no words`);
  numberDefects(place, holds, [words, countsByName(parameter.name)].join(' '), found);
  for (const object of objectsIn(parameter.type, words)) membersOf(object.declaration, object.around, found);
}

function numberDefects(place: string, holds: Holds, words: string, found: string[]): void {
  if (holds.numbers && !nameUnit(words.trim())) found.push(`${place} is a number without a unit`);
  if (holds.arrays && !nameShape(words)) found.push(`${place} does not say how its numbers are laid out`);
}

interface Inner {
  readonly declaration: DeclarationReflection;
  readonly around: string;
}

/** Objects without a name and functions inside a type, each with the words about it. */
function objectsIn(type: SomeType | undefined, around: string): Inner[] {
  switch (type?.type) {
    case 'reflection':
      return [{ declaration: type.declaration, around }];
    case 'union':
      return type.types.flatMap((part, k) => {
        const own = Comment.combineDisplayParts(type.elementSummaries?.[k]);
        return objectsIn(part, `${own} ${around}`.trim());
      });
    case 'intersection':
      return type.types.flatMap((part) => objectsIn(part, around));
    case 'array':
    case 'optional':
    case 'rest':
      return objectsIn(type.elementType, around);
    case 'typeOperator':
      return objectsIn(type.target, around);
    case 'tuple':
      return type.elements.flatMap((part) => objectsIn(part, around));
    case 'reference':
      return type.package === 'typescript'
        ? (type.typeArguments ?? []).flatMap((part) => objectsIn(part, around))
        : [];
    default:
      return [];
  }
}

/** A single word or number that tells the members of a union apart, or an object whose members are asked one by one. */
function isMark(type: SomeType | undefined): boolean {
  return type?.type === 'literal';
}

function wordsOf(comment: Comment | undefined): string {
  if (comment === undefined) return '';
  const blocks = comment.blockTags.filter(({ tag }) => tag !== '@throws').map(({ content }) => content);
  return [comment.summary, ...blocks]
    .map((part) => Comment.combineDisplayParts(part))
    .join(' ')
    .trim();
}

/** What the words around a member say of all members at once: "All in J." */
function forAll(around: string): string {
  return sentences(around)
    .filter((sentence) => /\ball\b/iu.test(sentence))
    .join(' ');
}

/** The word of a name that says of itself that it has no unit: `polePairs`, `slip`. */
function countsByName(name: string): string {
  const words = name.replaceAll(/(?<=[a-z])(?=[A-Z])/gu, ' ').toLowerCase();
  return /\b(?:count|index|line|column|seed|slip|poles|pole pairs|power factor|factor|share|ratio)\b/u.test(
    words,
  )
    ? 'a number'
    : '';
}

function sentences(text: string): string[] {
  return text.split(/(?<=\.)\s/u);
}

/** The sentences that mention a name. */
function sentencesWith(name: string, text: string): string {
  return sentences(text)
    .filter((sentence) => new RegExp(`(?<![\\w.])${name.replaceAll('$', '\\$')}(?!\\w)`, 'u').test(sentence))
    .join(' ');
}
