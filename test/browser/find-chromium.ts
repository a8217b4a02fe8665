import { execFileSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { mkdir, mkdtemp, readFile, rename, rm } from 'node:fs/promises';
import { delimiter, join } from 'node:path';
import { PROJECT_ROOT } from './project-root.ts';

export interface FoundChromium {
  readonly path: string;
  /** What the process needs beside its own environment. */
  readonly environment: Readonly<Record<string, string>>;
}

const PACKAGED = join(PROJECT_ROOT, 'node_modules/@sparticuz/chromium/package.json');
const INSTALLED = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/**
 * The browser to test with: CHROMIUM_PATH, else the packaged one, else an installed Chromium or Chrome. The packaged one
 * comes first because the same version is then judged everywhere.
 */
export async function findChromium(): Promise<FoundChromium> {
  const asked = process.env['CHROMIUM_PATH'];
  if (asked) return { path: asked, environment: {} };
  if (existsSync(PACKAGED)) return packagedChromium();
  const installed = (process.env['PATH'] ?? '')
    .split(delimiter)
    .flatMap((folder) => INSTALLED.map((name) => join(folder, name)))
    .find(isProgram);
  if (installed === undefined) throw new Error('no Chromium: run "npm ci", or set CHROMIUM_PATH to one');
  return { path: installed, environment: {} };
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Unpacks the Chromium inside the package, once, into .build. The package unpacks into the temporary folder and takes
 * whatever lies there for whole, so it is given a folder of its own, which is put in place by one rename.
 */
async function packagedChromium(): Promise<FoundChromium> {
  const { version } = JSON.parse(await readFile(PACKAGED, 'utf8')) as { version: string };
  const build = join(PROJECT_ROOT, '.build');
  const folder = join(build, `chromium-${version}`);
  if (!existsSync(folder)) {
    await mkdir(build, { recursive: true });
    const making = await mkdtemp(join(build, 'chromium-making-'));
    await unpackInto(making);
    await rename(making, folder).catch(() => rm(making, { recursive: true }));
  }
  return { path: join(folder, 'chromium'), environment: libraries(folder) };
}

async function unpackInto(folder: string): Promise<void> {
  const { TMPDIR, AWS_EXECUTION_ENV } = process.env;
  process.env['TMPDIR'] = folder;
  // By this name the package decides whether to unpack the libraries that a bare system lacks.
  process.env['AWS_EXECUTION_ENV'] = 'AWS_Lambda_nodejs20.x';
  try {
    const { default: chromium } = await import('@sparticuz/chromium');
    await chromium.executablePath();
  } finally {
    putBack('TMPDIR', TMPDIR);
    putBack('AWS_EXECUTION_ENV', AWS_EXECUTION_ENV);
  }
}

/** Others hold on to the environment object: it is set right in place, never replaced. */
function putBack(name: string, value: string | undefined): void {
  if (value === undefined) delete process.env[name];
  else process.env[name] = value;
}

/** The package's own libraries, only where the system lacks one of them. */
function libraries(folder: string): Readonly<Record<string, string>> {
  const needed = execFileSync('ldd', [join(folder, 'chromium')], { encoding: 'utf8' });
  return {
    ...(needed.includes('not found') ? { LD_LIBRARY_PATH: join(folder, 'al2023', 'lib') } : {}),
    ...(existsSync('/etc/fonts/fonts.conf') ? {} : { FONTCONFIG_PATH: join(folder, 'fonts') }),
  };
}
