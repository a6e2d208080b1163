/** Units as they stand in doc comments: SI and what is made of it, and those of the boundary. */
const UNITS = [
  'V',
  'A',
  'W',
  'VA',
  'J',
  'C',
  'g',
  'Ω',
  'H',
  'Hz',
  'Wb',
  'N',
  'N·m',
  'kg',
  'kg·m²',
  'm',
  's',
  'ms',
  'min',
  'h',
  'K',
  '°C',
  'rad',
  'deg',
  'bytes',
  'days',
  'years',
  'hours',
  'hp',
  'kW',
  'MB',
  'px',
  'pixels',
  'characters',
  'A²',
  'r/min',
  '%',
] as const;

/** A unit, or a quotient or product of some, with powers. */
const ONE = `(?:${[...UNITS].sort((a, b) => b.length - a.length).join('|')})`;
const COMPOUND = `(?:1|${ONE})(?:[·/]\\(?${ONE}[²³]?\\)?)+[²³]?`;
/**
 * A unit stands alone: at the beginning, or after a comma, a bracket, a number or "in", and before a mark, the end, or a word that
 * says of what kind it is. "A sweep" is an article.
 */
const AS_UNIT = new RegExp(
  `(?:^|[,;:(–]\\s*|\\bin (?:whole )?|\\d\\s?|\\band |\\bor )(?:${COMPOUND}|${ONE}[²³]?)(?=$|[.,;:)]|\\s+(?:r\\.m\\.s|crest|mean|per|at|of|since|from|after|before|mechanical|electrical|or|and|where|when|each|a|referred|for|as|by|peak|on|in|to|with|that|which|positive|if|unless|the|until)\\b|\\s*[(])`,
  'u',
);
/** A name with a unit that cannot be mistaken for a word may stand anywhere. */
const ANYWHERE =
  /(?:rad\/s|N·m|kg·m²|r\.m\.s\.|°C|\bHz\b|\bWb\b|Ω|1\/h\b|\b1\/H\b|\bseconds?\b|\bmilliseconds\b|\bunits?\b|\bSI\b|\bpixels?\b|\bper unit\b|\bradians?\b|\bdegrees?\b|\bbytes\b|\bdays\b|\byears?\b|\bhours?\b|\bpercent\b)/u;
/** Numbers that have no unit, by what they are. */
const PURE =
  /\b(?:counts?|number|numbers|numbered|index|indices|indexed|shares?|ratios?|factor|factors|probabilit(?:y|ies)|multiples?|seeds?|how many|how often|whole|line|column|position in|places?|quantiles?|exponent|between 0 and 1|0 … 1|0 to 1|times the|relative|fraction|power of|slip|sign|efficiency|cos φ|share|runs|rows|operations|threads|pairs|steps|evaluations|levels?|rank|dimensionless|coefficient|0 < \S+ ≤ 1|−1 or 1|1 or −1|threads?|workers?|version|schemas?|states|cosine|spares|kits|version)\b/iu;
/** What an array of numbers must be said to be: how long, in what order, or what its index means. */
const SHAPE =
  /\b(?:one|two|three|each|every|pers?|orders?|ordered|ascending|descending|length|same|lists?|entry|entries|index|columns?|rows?|pairs?|points?|as many|parallel|components?|as long as|A, B, C|by)\b|\[\w+\]|\d numbers/iu;

/** Whether the words name a unit, or say that there is none: a count, a share, an index. */
export function nameUnit(words: string): boolean {
  return AS_UNIT.test(words) || ANYWHERE.test(words) || PURE.test(words);
}

/** Whether the words say how an array is laid out. */
export function nameShape(words: string): boolean {
  return SHAPE.test(words);
}
