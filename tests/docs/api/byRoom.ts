import {
  type Application,
  Comment,
  CommentTag,
  type Context,
  Converter,
  type DeclarationReflection,
  ReflectionKind,
} from 'typedoc';

/** Rooms of `src/` under the words that a reader looks for, in the order in which a program meets them. */
const ROOM_WORDS = {
  scenario: 'Scenario: what is to be simulated',
  estimate: 'Estimate: from text and nameplate to a scenario',
  simulate: 'Simulate: the run',
  measure: 'Measure: figures of a run',
  assess: 'Assess: does plugging suit the load',
  survey: 'Survey: many runs, alternatives, plans',
  recording: 'Recording: tables and logs',
  report: 'Report: pages, figures, files',
  machine: 'Machine: circuit and steady state',
  shaft: 'Shaft: load, coupling, speed',
  starter: 'Starter: contactors and control circuit',
  numeric: 'Numeric',
  pool: 'Pool: surveys in worker threads',
} as const;

/** Headings of the documentation in their order. */
export const ROOM_ORDER: readonly string[] = Object.values(ROOM_WORDS);

/** Puts every exported name under the heading of the room that it comes from. */
export function sortIntoRooms(app: Application): void {
  app.converter.on(Converter.EVENT_CREATE_DECLARATION, (context: Context, made: DeclarationReflection) => {
    const isExport = made.parent?.kindOf([ReflectionKind.Module, ReflectionKind.Project]) ?? false;
    if (!isExport || made.kindOf(ReflectionKind.Module)) return;
    const file = context.getSymbolFromReflection(made)?.declarations?.[0]?.getSourceFile().fileName ?? '';
    const room = /\/src\/(\w+)\//u.exec(file)?.[1];
    const words = Object.entries(ROOM_WORDS).find(([name]) => name === room)?.[1];
    if (words === undefined) return;
    const tag = new CommentTag('@category', [{ kind: 'text', text: words }]);
    const commented = made.signatures ?? [made];
    for (const one of commented) {
      one.comment ??= new Comment();
      one.comment.blockTags.push(tag);
    }
  });
}
