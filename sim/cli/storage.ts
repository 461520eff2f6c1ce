/** What a file system complains of, in plain words. */

const MEANINGS: Record<string, string> = {
  ENOENT: 'there is no such file; check the path',
  ENOTDIR: 'a part of the path is a file, not a folder',
  EEXIST: 'there is a file of that name, not a folder',
  EISDIR: 'there is a folder of that name, not a file',
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EROFS: 'the disk takes no files',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk is full: no more is allowed to this user',
  EFBIG: 'the file would become larger than is allowed here',
  EIO: 'the disk does not work',
  EPIPE: 'its reader has gone',
  ENAMETOOLONG: 'the name is too long',
};

/** The words for an error of the file system; undefined for any other error. */
export function storageProblem(error: unknown): string | undefined {
  const code = error instanceof Error && 'code' in error ? String(error.code) : undefined;
  return code === undefined ? undefined : (MEANINGS[code] ?? `the system says ${code}`);
}
