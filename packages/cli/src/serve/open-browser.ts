import { spawn } from 'node:child_process';

/** Asks the system to show an address in the browser. Whether there was a way to ask; not whether one opened. */
export function openBrowser(address: string): Promise<boolean> {
  const [command, args]: [string, string[]] =
    process.platform === 'darwin'
      ? ['open', [address]]
      : process.platform === 'win32'
        ? ['rundll32', ['url.dll,FileProtocolHandler', address]]
        : ['xdg-open', [address]];
  return new Promise((settle) => {
    const child = spawn(command, args, { stdio: 'ignore', detached: true });
    child.once('error', () => settle(false));
    child.once('spawn', () => {
      child.unref();
      settle(true);
    });
  });
}
