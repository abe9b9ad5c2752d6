// Loaded before anything else: an older Node cannot even read the files of this program, so it is told in one plain line. Plain JavaScript on purpose.
const needed = 24;
const found = Number(process.versions.node.split('.')[0]);

if (found < needed) {
  process.stderr.write(
    `Takewell needs Node ${needed} or newer, this is ${process.versions.node}: start it by npm (npm start), which brings its own, or install Node ${needed}.\n`,
  );
  process.exit(2);
}
