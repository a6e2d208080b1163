import ts from 'typescript';

/**
 * Classes of error that the functions of a program throw, themselves or through those they call. Plain `Error` is left out: it
 * marks what cannot happen. A function that is handed in from outside counts for nothing; one that is made inside counts as called.
 */
export function thrownBy(program: ts.Program): (declaration: ts.Node) => ReadonlySet<string> {
  const checker = program.getTypeChecker();
  const known = new Map<ts.Node, ReadonlySet<string>>();

  function ofFunction(declaration: ts.Node): ReadonlySet<string> {
    const before = known.get(declaration);
    if (before !== undefined) return before;
    const found = new Set<string>();
    // Stands here while the function is read, so that one which calls itself comes to an end.
    known.set(declaration, found);
    for (const name of within(declaration)) found.add(name);
    return found;
  }

  function within(node: ts.Node): Set<string> {
    const found = new Set<string>();
    if (ts.isTypeNode(node)) return found;
    if (ts.isTryStatement(node)) {
      for (const name of pastCatch(node)) found.add(name);
      return found;
    }
    if (ts.isThrowStatement(node)) for (const name of classesOf(node.expression)) found.add(name);
    if (ts.isCallExpression(node) || ts.isNewExpression(node))
      for (const called of [node.expression, ...(node.arguments ?? [])])
        for (const name of throughName(called)) found.add(name);
    ts.forEachChild(node, (child) => {
      for (const name of within(child)) found.add(name);
    });
    return found;
  }

  /** What gets out of a try: what its catch throws anew, and of what it caught all that it does not ask for by class. */
  function pastCatch({ tryBlock, catchClause, finallyBlock }: ts.TryStatement): Set<string> {
    const inside = within(tryBlock);
    const found = finallyBlock === undefined ? new Set<string>() : within(finallyBlock);
    if (catchClause === undefined) return new Set([...inside, ...found]);
    for (const name of within(catchClause.block)) found.add(name);
    const text = catchClause.block.getText();
    const caught = catchClause.variableDeclaration?.name.getText();
    if (caught === undefined || !new RegExp(`throw ${caught};`, 'u').test(text)) return found;
    const kept = [...text.matchAll(/instanceof (\w+)/gu)].map((match) => match[1]!);
    if (!kept.includes('Error')) for (const name of inside) if (!kept.includes(name)) found.add(name);
    return found;
  }

  function classesOf(thrown: ts.Expression): string[] {
    const type = checker.getTypeAtLocation(thrown);
    const parts = type.isUnion() ? type.types : [type];
    return parts
      .map((part) => part.symbol?.name)
      .filter((name): name is string => name !== undefined && name !== 'Error' && /Error$/u.test(name));
  }

  function throughName(called: ts.Expression): ReadonlySet<string> {
    if (!ts.isIdentifier(called)) return new Set();
    const symbol = checker.getSymbolAtLocation(called);
    if (symbol === undefined) return new Set();
    const target = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
    const declaration = target.valueDeclaration;
    const isFunction =
      declaration !== undefined &&
      ((ts.isFunctionDeclaration(declaration) && declaration.body !== undefined) ||
        (ts.isVariableDeclaration(declaration) &&
          declaration.initializer !== undefined &&
          ts.isArrowFunction(declaration.initializer)));
    return isFunction ? ofFunction(declaration) : new Set();
  }

  return ofFunction;
}
