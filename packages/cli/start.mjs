// `npm start`: the demo where nothing else was asked for, else the command as typed.

if (process.argv.length === 2) process.argv.push("demo");
await import("./bin/sealtrend.js");
