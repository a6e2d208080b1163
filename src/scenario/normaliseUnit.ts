/** Spellings people use → spellings the unit library reads, by whole word. */
const words: Readonly<Record<string, string>> = {
  Nm: 'N m',
  kNm: 'kN m',
  Nms: 'N m s',
  kgm: 'kg m',
  lbft: 'lb ft',
  ftlb: 'ft lb',
  lbfft: 'lbf ft',
  ftlbf: 'ft lbf',
  HP: 'hp',
  // The metric horsepower by its German and its French and Italian name, the electrical one by a suffix.
  PS: 'hpMetric',
  CV: 'hpMetric',
  hpE: 'hpElectric',
  RPM: 'rpm',
  Ohm: 'ohm',
  Ohms: 'ohm',
  amp: 'A',
  amps: 'A',
  degrees: 'deg',
  lbs: 'lb',
  revolution: 'rev',
  revolutions: 'rev',
  hours: 'h',
};

/**
 * Brings a unit as people write it into the spelling the unit library reads: `kg·m²` → `kg m^2`, `lb-ft²` → `lb ft^2`,
 * `mΩ` → `mohm`, `r/min` → `rpm`, `°` → `deg`, `N·m/(rad/s)` → `N m s/rad`.
 *
 * @param text the unit alone, without its number
 * @returns the same unit in ASCII: words, spaces, `/` and `^`; text it does not understand comes back as it was
 */
export function normaliseUnit(text: string): string {
  return (
    text
      .normalize('NFKC')
      .replace(/[·⋅∙•×*]/g, ' ')
      .replace(/°/g, 'deg')
      .replace(/Ω/g, 'ohm')
      .replace(/[µμ]/g, 'u')
      .replace(/(?<=[A-Za-z0-9])[-.](?=[A-Za-z])/g, ' ')
      .replace(/([A-Za-z])([23])(?![0-9])/g, '$1^$2')
      .replace(/\/\s*\(\s*rad\s*\/\s*s\s*\)/g, ' s/rad')
      .replace(/\bmin\s*\^\s*-1\b/g, 'rpm')
      .replace(/\b(?:r|rev)\s*\/\s*min\b/g, 'rpm')
      // The unit library takes no digits in names, and g alone is a gram.
      .replace(/\bg_?0\b|\bgn\b/g, 'standardGravity')
      .replace(/\s*\^\s*/g, '^')
      .replace(/\s*\/\s*/g, '/')
      .replace(/[A-Za-z]+/g, (word) => (Object.hasOwn(words, word) ? words[word]! : word))
      .replace(/\s+/g, ' ')
      .trim()
  );
}
