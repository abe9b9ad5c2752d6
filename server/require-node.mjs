// Loaded before anything else: an older Node cannot even read the files of this program, so it is told in one plain line. Plain JavaScript on purpose.
import module from 'node:module';
import { fileURLToPath } from 'node:url';

const needed = 24;
const found = Number(process.versions.node.split('.')[0]);

if (found < needed) {
  process.stderr.write(
    `Takewell needs Node ${needed} or newer, this is ${process.versions.node}: start it by npm (npm start), which brings its own, or install Node ${needed}.\n`,
  );
  process.exit(2);
}

// What was read once is not read anew at each start: a service that is started again after a fault is back in half the time. Where the folder
// cannot be written, Node goes on without; what is damaged there it makes anew.
module.enableCompileCache(fileURLToPath(new URL('../node_modules/.cache/takewell', import.meta.url)));
