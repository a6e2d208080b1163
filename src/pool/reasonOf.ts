/** The system's reason for a failed file access, in words. */
export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  switch (code) {
    case 'ENOENT':
      return 'there is no such file or folder';
    case 'EACCES':
    case 'EPERM':
      return 'access is not permitted';
    case 'EISDIR':
      return 'it is a folder';
    case 'ENOTDIR':
    case 'EEXIST':
      return 'a file stands where a folder is needed';
    case 'ENOSPC':
    case 'EDQUOT':
      return 'the disk is full';
    case 'EROFS':
      return 'the disk is read-only';
    default:
      return error instanceof Error ? error.message : String(error);
  }
}
