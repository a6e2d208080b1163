import { Application, Logger, LogLevel, type ProjectReflection, type TypeDocOptions } from 'typedoc';
import type ts from 'typescript';
import { sortIntoRooms } from './byRoom.ts';

/** The public names of some entry points, as the documentation sees them. */
export interface Api {
  /** Renders what was read. */
  readonly app: Application;
  /** One child per entry point; the entry point itself where there is only one. */
  readonly project: ProjectReflection;
  /** What the compiler knows of the same files, one per entry point. */
  readonly sources: readonly { readonly program: ts.Program; readonly file: ts.SourceFile }[];
  /** What the reader itself has to say: types that are used but not exported, links that lead nowhere, tags it does not know. */
  readonly warnings: readonly string[];
}

/** Keeps what it is told. */
class Listener extends Logger {
  readonly heard: string[] = [];

  override log(message: string, level: LogLevel): void {
    if (level >= LogLevel.Warn) this.heard.push(message);
  }
}

/**
 * Reads the entry points that the options name.
 *
 * @param options settings of typedoc; with `options` among them, a file of such settings is read first
 * @throws Error where an entry point cannot be read
 */
export async function readApi(options: TypeDocOptions): Promise<Api> {
  const app = await Application.bootstrap(options);
  const listener = new Listener();
  app.logger = listener;
  sortIntoRooms(app);
  const entries = app.getEntryPoints();
  const project = entries === undefined ? undefined : app.converter.convert(entries);
  if (entries === undefined || project === undefined) throw new Error(listener.heard.join('\n'));
  app.validate(project);
  return {
    app,
    project,
    sources: entries.map(({ program, sourceFile }) => ({ program, file: sourceFile })),
    warnings: listener.heard,
  };
}
