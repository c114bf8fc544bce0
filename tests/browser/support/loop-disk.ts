import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

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
   */
  cutPower(): LoopDisk;
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
    cutPower() {
      const next = mkdtempSync(join(tmpdir(), 'sparewell-disk-'));
      run('cp', '--sparse=always', image, join(next, 'disk.img'));
      return mounted(next);
    },
    remove() {
      run('umount', '-l', root);
      rmSync(work, { recursive: true, force: true });
    },
  };
}
