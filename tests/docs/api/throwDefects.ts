import ts from 'typescript';
import type { Api } from './readApi.ts';
import { thrownBy } from './thrownBy.ts';

/** Exported functions that throw a class of error which no `@throws` of theirs names. */
export function throwDefects({ sources }: Pick<Api, 'sources'>): string[] {
  // One for all entry points of a program: what a function throws is asked once.
  const readers = new Map(sources.map(({ program }) => [program, thrownBy(program)]));
  return sources.flatMap(({ program, file }) => {
    const checker = program.getTypeChecker();
    const thrown = readers.get(program)!;
    const entry = checker.getSymbolAtLocation(file);
    const names = entry === undefined ? [] : checker.getExportsOfModule(entry);
    return names.flatMap((name) => {
      const symbol = name.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(name) : name;
      const declaration = symbol.valueDeclaration;
      if (declaration === undefined || !ts.isFunctionDeclaration(declaration)) return [];
      const said = symbol
        .getJsDocTags(checker)
        .filter((tag) => tag.name === 'throws')
        .map((tag) => ts.displayPartsToString(tag.text))
        .join(' ');
      return [...thrown(declaration)]
        .filter((error) => !said.includes(error))
        .map((error) => `${name.name} throws ${error} without saying so`);
    });
  });
}
