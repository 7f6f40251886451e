/**
 * Sets a fresh clone up: installs what the lock file says when it is not there, and with
 * `--browser` finds a browser for the tests. Runs under whatever Node started npm (20 or
 * newer), before the project's own Node exists: plain JavaScript, no dependencies.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');
const stamp = join(root, 'node_modules', '.installed-from');

function lockDigest() {
  return createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
}

function isInstalled() {
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === lockDigest();
}

function run(command, args) {
  // npm is a script on Windows, which only a shell can start.
  const shell = process.platform === 'win32';
  return spawnSync(command, args, { cwd: root, stdio: 'inherit', shell }).status === 0;
}

function install() {
  if (isInstalled()) return;
  console.error('Installing what package-lock.json lists (about a minute, 640 MB on disk) ...');
  if (!run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'])) {
    console.error(
      'npm ci failed. Check the network and the disk, then run the same command again; ' +
        'npm 10 or newer and Node 20 or newer are needed.',
    );
    process.exit(1);
  }
  writeFileSync(stamp, lockDigest());
}

/** Debian's programs that tests compare with; a test whose program is absent says so and skips. */
const references = [
  'argyll',
  'argyll-ref',
  'icc-profiles-free',
  'imagemagick',
  'libimage-exiftool-perl',
  'libvips-tools',
  'opencv-doc',
  'poppler-utils',
  'python3-numpy',
  'python3-opencv',
  'python3-skimage',
];

async function browser() {
  const { findBrowser } = await import('./find-browser.mjs');
  const canInstall = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  const wanted = [
    ...(findBrowser() ? [] : ['chromium']),
    // CI compares with the reference programs too; a person's machine is left as it is.
    ...(process.env.CI ? references : []),
  ];
  if (wanted.length > 0 && canInstall) {
    const quiet = ['-qq', '-o=Dpkg::Use-Pty=0'];
    const have = spawnSync('dpkg-query', ['-W', ...wanted], { stdio: 'ignore' }).status === 0;
    if (!have) {
      console.error(`Installing ${wanted.join(', ')} from Debian ...`);
      process.env.DEBIAN_FRONTEND = 'noninteractive';
      run('apt-get', [...quiet, 'update']);
      run('apt-get', [...quiet, 'install', '-y', '--no-install-recommends', ...wanted]);
    }
  }
  if (!findBrowser()) {
    console.error(
      'The tests look at pages in Chromium and found none. Install Chromium or Google Chrome, ' +
        'or set MIRRORLEAF_BROWSER to its path, then run the same command again.',
    );
    process.exit(1);
  }
}

install();
if (process.argv.includes('--browser')) await browser();
