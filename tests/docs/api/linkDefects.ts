import { Comment, type ProjectReflection } from 'typedoc';
import { placeOf } from './placeOf.ts';

/** Names in whose words an address of the network stands: the pages are read where there is none. */
export function linkDefects(project: ProjectReflection): string[] {
  return Object.values(project.reflections)
    .filter(({ comment }) => {
      const parts = [comment?.summary, ...(comment?.blockTags ?? []).map(({ content }) => content)];
      return parts.some((part) => /https?:/u.test(Comment.combineDisplayParts(part)));
    })
    .map((one) => `${placeOf(one)} leads to the network`);
}
