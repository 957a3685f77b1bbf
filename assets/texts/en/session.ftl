### What the program says about changes: names of actions, refusals, steps that can be undone.
