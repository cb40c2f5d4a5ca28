#!/usr/bin/env node
// CommonJS on purpose (package.json beside this file): an ES module that imports the bundle has it scanned twice,
// which costs half as much again as starting Node.
require("../dist/sealtrend.cjs");
