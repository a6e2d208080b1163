import { ReflectionKind, type SomeType } from 'typedoc';

/** What a type holds by itself, not by the names it refers to: those speak for themselves. */
export interface Holds {
  readonly numbers: boolean;
  /** Numbers in arrays: their order needs words. */
  readonly arrays: boolean;
  /** Text, yes or no, one of some words, or an object without a name. */
  readonly plain: boolean;
}

const ARRAYS = /^(?:Float64Array|Float32Array|Uint8Array|Int32Array|Array|ReadonlyArray)$/u;
const WRAPPERS =
  /^(?:Array|ReadonlyArray|Promise|Readonly|Record|ReadonlyMap|Map|Partial|Iterable|Set|ReadonlySet)$/u;

const NOTHING: Holds = { numbers: false, arrays: false, plain: false };
const both = (a: Holds, b: Holds): Holds => ({
  numbers: a.numbers || b.numbers,
  arrays: a.arrays || b.arrays,
  plain: a.plain || b.plain,
});
const inArray = (of: Holds): Holds => ({ ...of, arrays: of.arrays || of.numbers });

/** What a type holds. */
export function numbersIn(type: SomeType | undefined): Holds {
  switch (type?.type) {
    case 'intrinsic':
      return {
        ...NOTHING,
        numbers: type.name === 'number' || type.name === 'bigint',
        plain: type.name === 'string' || type.name === 'boolean' || type.name === 'unknown',
      };
    case 'literal':
      return { ...NOTHING, plain: type.value !== null };
    case 'union':
    case 'intersection':
      return type.types.map(numbersIn).reduce(both, NOTHING);
    case 'array':
      return inArray(numbersIn(type.elementType));
    case 'tuple':
      return inArray(type.elements.map(numbersIn).reduce(both, NOTHING));
    case 'namedTupleMember':
      return numbersIn(type.element);
    case 'optional':
    case 'rest':
      return numbersIn(type.elementType);
    case 'typeOperator':
      return numbersIn(type.target);
    case 'reflection':
      return { ...NOTHING, plain: type.declaration.kindOf(ReflectionKind.TypeLiteral) };
    case 'reference': {
      const own = ARRAYS.test(type.name) && type.name.endsWith('64Array');
      const parts = WRAPPERS.test(type.name) ? (type.typeArguments ?? []) : [];
      const held = parts.map(numbersIn).reduce(both, NOTHING);
      const list = /Array$/u.test(type.name) ? inArray(held) : held;
      return own ? { numbers: true, arrays: true, plain: false } : list;
    }
    default:
      return NOTHING;
  }
}
