// A program of texts that stand in no file, beside whatever files they import.

import ts from "typescript";

/** @param texts - by the path they would have */
export const programOf = (
  texts: Readonly<Record<string, string>>,
  options: ts.CompilerOptions,
): ts.Program => {
  const host = ts.createCompilerHost(options);
  const readFile = host.readFile.bind(host);
  const fileExists = host.fileExists.bind(host);
  const getSourceFile = host.getSourceFile.bind(host);
  host.readFile = (path) => texts[path] ?? readFile(path);
  host.fileExists = (path) => path in texts || fileExists(path);
  host.getSourceFile = (path, ...rest) =>
    path in texts
      ? ts.createSourceFile(path, texts[path] ?? "", ts.ScriptTarget.ES2023, true)
      : getSourceFile(path, ...rest);
  return ts.createProgram(Object.keys(texts), options, host);
};
