// The command as its own process, straight from the sources.
import { main } from '../../packages/cli/src/index.ts';

process.exitCode = await main(process.argv.slice(2));
