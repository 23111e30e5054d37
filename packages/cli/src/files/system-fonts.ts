import { readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { basename, join } from 'node:path';

/** Where each system keeps its fonts. */
const FOLDERS: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  darwin: ['/System/Library/Fonts', '/Library/Fonts', join(homedir(), 'Library/Fonts')],
  win32: [
    join(process.env.WINDIR ?? 'C:\\Windows', 'Fonts'),
    join(process.env.LOCALAPPDATA ?? homedir(), 'Microsoft/Windows/Fonts'),
  ],
};
const UNIX_FOLDERS = [
  '/usr/share/fonts',
  '/usr/local/share/fonts',
  join(homedir(), '.fonts'),
  join(homedir(), '.local/share/fonts'),
];

/** Scripts, each with a pattern that the names of its fonts match. */
const NAMED: readonly (readonly [script: RegExp, fonts: RegExp])[] = [
  [
    /[\p{sc=Han}\p{sc=Hiragana}\p{sc=Katakana}\p{sc=Hangul}\p{sc=Bopomofo}]/u,
    /cjk|gothic|ming|yahei|msyh|simsun|simhei|song|pingfang|hiragino|malgun|han(sans|serif)|wqy/i,
  ],
  [/\p{sc=Arabic}/u, /arabic|naskh|geeza|tahoma|segoeui|dejavusans|arial/i],
  [/\p{sc=Hebrew}/u, /hebrew|david|segoeui|dejavusans|arial/i],
  [/\p{sc=Devanagari}/u, /devanagari|mangal|nirmala|kohinoor/i],
  [/\p{sc=Thai}/u, /thai|leelawad|thonburi/i],
  [/\p{sc=Georgian}/u, /georgian|dejavusans|segoeui|sylfaen/i],
  [/\p{sc=Armenian}/u, /armenian|dejavusans|segoeui|sylfaen/i],
];

/**
 * The system's font files, those first that are likely to have a sign: named for its script, upright, sans serif. Folders that
 * cannot be read are passed over.
 */
export function listSystemFonts(sign: string, folders: readonly string[] = systemFolders()): string[] {
  const named = NAMED.find(([script]) => script.test(sign))?.[1];
  const rank = (path: string) => {
    const name = basename(path);
    const likely = named?.test(name) ? 0 : 8;
    const plain = /bold|black|heavy|light|thin|medium|italic|oblique|condensed/i.test(name) ? 4 : 0;
    const sans = /serif|mono|rashi|nastaliq|kufi/i.test(name) ? 3 : /sans|gothic/i.test(name) ? 0 : 1.5;
    return likely + plain + sans + (/regular/i.test(name) ? 0 : 1);
  };
  return folders
    .flatMap(fontsIn)
    .map((path) => ({ path, rank: rank(path) }))
    .sort((a, b) => a.rank - b.rank || (a.path < b.path ? -1 : 1))
    .map(({ path }) => path);
}

function systemFolders(): readonly string[] {
  return FOLDERS[process.platform] ?? UNIX_FOLDERS;
}

function fontsIn(folder: string): string[] {
  try {
    return readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(ttf|otf|ttc|otc)$/i.test(name))
      .map((name) => join(folder, name));
  } catch {
    return [];
  }
}
