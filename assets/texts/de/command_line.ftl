### The command line.
