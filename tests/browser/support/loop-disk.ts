import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';

/** A small disk of its own, for what would hurt a real one. */
export interface LoopDisk {
  /** A folder on the disk. */
  readonly folder: string;
  /** Takes all room that is left. */
  fill(): void;
  makeRoom(): void;
  /**
   * The disk as it would be found after a power cut now: what the system has not written yet is not on it.
   * The files on it are mended as a system does at its start.
   * @param writers processes that write on it: they are held still while it is copied
   * @throws when something else writes on it all the time
   */
  cutPower(writers: readonly number[]): LoopDisk;
  remove(): void;
}

/** Why there is no such disk here, in a sentence. */
export interface NoDisk {
  readonly reason: string;
}

const run = (program: string, ...args: string[]): void => {
  execFileSync(program, args, { stdio: ['ignore', 'ignore', 'pipe'] });
};

/**
 * Makes a disk of so many megabytes in a file. That takes the right to mount, which an ordinary user of a
 * machine does not have.
 */
export function smallDisk(megabytes: number): LoopDisk | NoDisk {
  const work = mkdtempSync(join(tmpdir(), 'sparewell-disk-'));
  try {
    run('truncate', '-s', `${megabytes}M`, join(work, 'disk.img'));
    run('mkfs.ext4', '-q', '-F', join(work, 'disk.img'));
    return mounted(work);
  } catch (error) {
    rmSync(work, { recursive: true, force: true });
    return { reason: error instanceof Error ? error.message.split('\n').join(' ').trim() : String(error) };
  }
}

/** Copies of a disk that are thrown away because the system wrote on it meanwhile, at most. */
const MOST_COPIES = 20;

/** Counts of what the system has written on the disk that is mounted at a folder. */
function writesOn(root: string): string {
  const line = readFileSync('/proc/mounts', 'utf8')
    .split('\n')
    .find((one) => one.split(' ')[1] === root);
  return readFileSync(`/sys/block/${basename(line?.split(' ')[0] ?? '')}/stat`, 'utf8')
    .trim()
    .split(/\s+/)
    .slice(4, 9) // writes, writes merged, sectors written, time, and how many are under way (Linux, Documentation/block/stat.rst)
    .join(' ');
}

/**
 * No disk is ever found as a copy has it of which one half was read before a write and the other after it: such
 * a copy is made again.
 */
function copyAtOneMoment(image: string, root: string, copy: string): void {
  for (let tries = 0; tries < MOST_COPIES; tries++) {
    const before = writesOn(root);
    run('cp', '--sparse=always', image, copy);
    if (before.endsWith(' 0') && writesOn(root) === before) return;
  }
  throw new Error('The disk was written on while it was copied, again and again.');
}

function mounted(work: string): LoopDisk {
  const image = join(work, 'disk.img');
  const root = join(work, 'root');
  const folder = join(root, 'profile');
  const ballast = join(root, 'ballast');
  mkdirSync(root);
  run('mount', '-o', 'loop', image, root);
  mkdirSync(folder, { recursive: true });
  return {
    folder,
    fill() {
      // Ends with an error when the disk is full: that is what it is for.
      try {
        run('dd', 'if=/dev/zero', `of=${ballast}`, 'bs=64k');
      } catch {
        writeFileSync(join(work, 'full'), '');
      }
    },
    makeRoom: () => rmSync(ballast),
    cutPower(writers) {
      const next = mkdtempSync(join(tmpdir(), 'sparewell-disk-'));
      for (const writer of writers) process.kill(writer, 'SIGSTOP');
      try {
        copyAtOneMoment(image, root, join(next, 'disk.img'));
      } finally {
        for (const writer of writers) process.kill(writer, 'SIGCONT');
      }
      return mounted(next);
    },
    remove() {
      run('umount', '-l', root);
      try {
        rmSync(work, { recursive: true, force: true, maxRetries: 10 });
      } catch {
        // A browser that is just being ended still makes files where the disk was: they stay among the temporary ones.
      }
    },
  };
}
