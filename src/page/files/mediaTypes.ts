/** Media types by the end of a file's name. */
export const MEDIA_TYPES: Readonly<Record<string, string>> = {
  html: 'text/html',
  svg: 'image/svg+xml',
  csv: 'text/csv',
  json: 'application/json',
  yaml: 'application/yaml',
};
