import { decodeBase64Url, encodeBase64Url } from '../report/lesson/base64Url.ts';
import { byteAllowance } from '../report/lesson/byteAllowance.ts';
import {
  LINK_VERSION,
  type LinkParts,
  LONGEST_LINK,
  linkJson,
  MOST_LINK_BYTES,
  readLinkJson,
} from '../report/lesson/linkParts.ts';

/** Why there is no link, or nothing to be had from one. */
export interface LinkProblem {
  readonly kind: 'linkProblem';
  /** A sentence for the person in front of the page. */
  readonly message: string;
}

/** The part of an address behind its #: everything, deflated, in the alphabet of addresses. A problem where it is too much. */
export async function linkOf(parts: LinkParts): Promise<string | LinkProblem> {
  const bytes = new TextEncoder().encode(linkJson(parts));
  if (bytes.length > MOST_LINK_BYTES)
    return problem('The scenario is too long for a link: save it as a file and hand that out.');
  const packed = await gathered(through(bytes, new CompressionStream('deflate-raw')), LONGEST_LINK);
  return packed === null
    ? problem('The scenario is too long for a link: save it as a file and hand that out.')
    : `${LINK_VERSION}${encodeBase64Url(packed)}`;
}

/** What a link carries; of a damaged one, of another version, or of no link at all a problem in words, never an exception. */
export async function readLink(hash: string): Promise<LinkParts | LinkProblem> {
  const link = hash.startsWith('#') ? hash.slice(1) : hash;
  if (link === '') return problem('This address carries no scenario.');
  if (!link.startsWith(LINK_VERSION))
    return problem(
      /^v\d{1,9}\./u.test(link)
        ? 'This link was made by another version of the page: ask for a new one.'
        : 'This is no link to a scenario: it should begin with #v1. behind the address of the page.',
    );
  if (link.length > LONGEST_LINK) return problem('This link is longer than any that the page makes.');
  const packed = decodeBase64Url(link.slice(LINK_VERSION.length));
  if (packed === null) return problem(DAMAGED);
  try {
    const bytes = await gathered(through(packed, new DecompressionStream('deflate-raw')), MOST_LINK_BYTES);
    if (bytes === null)
      return problem('This link unfolds to more than any scenario holds; it was not opened.');
    return readLinkJson(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) ?? problem(DAMAGED);
  } catch {
    return problem(DAMAGED);
  }
}

/** True for a problem. */
export function isLinkProblem(value: unknown): value is LinkProblem {
  return typeof value === 'object' && value !== null && 'kind' in value && value.kind === 'linkProblem';
}

const DAMAGED =
  'This link is damaged: part of it was lost or changed on the way. Copy it whole, or ask for it again.';

function problem(message: string): LinkProblem {
  return { kind: 'linkProblem', message };
}

function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
): ReadableStream<Uint8Array> {
  return new Blob([bytes]).stream().pipeThrough(stream);
}

/** All bytes of a stream; null as soon as there are more than `most`: what is left is not even unpacked. */
async function gathered(
  stream: ReadableStream<Uint8Array>,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const reader = stream.getReader();
  const chunks: Uint8Array<ArrayBuffer>[] = [];
  const allowed = byteAllowance(most);
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    if (!allowed(value.length)) {
      await reader.cancel().catch(() => undefined);
      return null;
    }
    chunks.push(new Uint8Array(value));
  }
  return new Uint8Array(await new Blob(chunks).arrayBuffer());
}
