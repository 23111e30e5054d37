// Writes the usage block of docs/command-line.md from the table of commands.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { COMMANDS } from '../src/commands.ts';
import { usageText } from '../src/help/overview.ts';

const page = fileURLToPath(new URL('../../../docs/command-line.md', import.meta.url));
const usage = await usageText(COMMANDS);
writeFileSync(
  page,
  readFileSync(page, 'utf8').replace(/^```\nfielded [\s\S]*?^```/m, () => `\`\`\`\n${usage}\`\`\``),
);
