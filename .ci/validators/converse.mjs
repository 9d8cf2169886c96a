// Speaks with a language server as an editor does, by the client side of the
// protocol's reference library: opens a spec or a standards file, asks for its
// outline, and for help, completion and definition at every word of it, takes
// every change that is offered, one after the other, as long as there are any,
// and leaves. Prints what there is to say as one line of JSON, or fails where an
// answer does not have the protocol's shape.
// Usage: node converse.mjs PROGRAM FILE
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import lsp from 'vscode-languageserver-protocol/node.js';
import { TextDocument } from 'vscode-languageserver-textdocument';

const [program, file] = process.argv.slice(2);
const uri = pathToFileURL(file).href;
const server = spawn(program, ['serve-editor'], { stdio: ['pipe', 'pipe', 'inherit'] });
const exited = new Promise((done) => server.on('exit', done));
const connection = lsp.createProtocolConnection(
  new lsp.StreamMessageReader(server.stdout), new lsp.StreamMessageWriter(server.stdin));

const registered = [];
connection.onRequest(lsp.RegistrationRequest.type, (p) => { registered.push(...p.registrations); });
let awaited = () => {};
connection.onNotification(lsp.PublishDiagnosticsNotification.type, (p) => awaited(p));
const published = (version) => new Promise((done) => {
  awaited = (p) => { if (p.uri === uri && p.version === version) done(p.diagnostics); };
});
connection.listen();

const { capabilities } = await connection.sendRequest(lsp.InitializeRequest.type, {
  processId: process.pid, rootUri: null, capabilities: {
    workspace: { workspaceEdit: { documentChanges: true }, didChangeWatchedFiles: { dynamicRegistration: true } },
    textDocument: {
      publishDiagnostics: { relatedInformation: true },
      documentSymbol: { hierarchicalDocumentSymbolSupport: true },
      codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } },
    },
  },
});
assert.equal(capabilities.positionEncoding, lsp.PositionEncodingKind.UTF16);
assert.equal(capabilities.textDocumentSync.change, lsp.TextDocumentSyncKind.Full);
await connection.sendNotification(lsp.InitializedNotification.type, {});

let version = 1;
let text = TextDocument.create(uri, 'toml', version, readFileSync(file, 'utf8'));
let diagnostics = published(version);
await connection.sendNotification(lsp.DidOpenTextDocumentNotification.type, {
  textDocument: { uri, languageId: 'toml', version, text: text.getText() },
});
diagnostics = await diagnostics;
const shaped = (list) => list.forEach((d) => {
  assert(lsp.Diagnostic.is(d), JSON.stringify(d));
  assert(text.getText(d.range).length > 0, `nothing is marked: ${JSON.stringify(d)}`);
});
shaped(diagnostics);
const before = diagnostics.map((d) => d.code);

const inside = (r, o) => text.offsetAt(o.start) <= text.offsetAt(r.start) && text.offsetAt(r.end) <= text.offsetAt(o.end);
const outline = [];
const outlined = (symbols, within) => symbols.forEach((s) => {
  assert(lsp.DocumentSymbol.is(s), JSON.stringify(s));
  assert(inside(s.selectionRange, s.range) && inside(s.range, within), JSON.stringify(s));
  outline.push(s.name);
  outlined(s.children ?? [], s.range);
});
outlined(await connection.sendRequest(lsp.DocumentSymbolRequest.type, { textDocument: { uri } }),
  { start: text.positionAt(0), end: text.positionAt(text.getText().length) });

const defined = {};
let helped = 0, completed = 0;
for (const word of text.getText().matchAll(/[\w"]+/g)) {
  const at = { textDocument: { uri }, position: text.positionAt(word.index + 1) };
  const hover = await connection.sendRequest(lsp.HoverRequest.type, at);
  if (hover) { assert(lsp.Hover.is(hover), JSON.stringify(hover)); helped++; }
  for (const item of await connection.sendRequest(lsp.CompletionRequest.type, at)) {
    assert(lsp.TextEdit.is(item.textEdit), JSON.stringify(item));
    assert(item.documentation === undefined || lsp.MarkupContent.is(item.documentation));
    assert.equal(item.textEdit.range.start.line, item.textEdit.range.end.line);
    completed++;
  }
  for (const place of await connection.sendRequest(lsp.DefinitionRequest.type, at) ?? []) {
    assert(lsp.Location.is(place), JSON.stringify(place));
    (defined[word[0]] ??= []).push(place.uri === uri ? text.getText(place.range) : `${place.uri}:${place.range.start.line + 1}`);
  }
}

const taken = [];
for (;;) {
  const range = { start: text.positionAt(0), end: text.positionAt(text.getText().length) };
  const actions = await connection.sendRequest(lsp.CodeActionRequest.type, { textDocument: { uri }, range, context: { diagnostics } });
  actions.forEach((a) => assert(lsp.CodeAction.is(a), JSON.stringify(a)));
  if (actions.length === 0 || taken.length > 20) break;
  const [{ textDocument, edits }] = actions[0].edit.documentChanges;
  assert.deepEqual(textDocument, { uri, version });
  taken.push({ title: actions[0].title, code: actions[0].diagnostics[0].code, message: actions[0].diagnostics[0].message });
  text = TextDocument.create(uri, 'toml', ++version, TextDocument.applyEdits(text, edits));
  const next = published(version);
  await connection.sendNotification(lsp.DidChangeTextDocumentNotification.type, {
    textDocument: { uri, version }, contentChanges: [{ text: text.getText() }],
  });
  diagnostics = await next;
  shaped(diagnostics);
}

await assert.rejects(connection.sendRequest('no/such'), { code: lsp.ErrorCodes.MethodNotFound });
await connection.sendRequest(lsp.ShutdownRequest.type);
await connection.sendNotification(lsp.ExitNotification.type);
const status = await exited;
console.log(JSON.stringify({
  before, after: diagnostics.map((d) => d.code), messages: diagnostics.map((d) => d.message), taken, helped, completed, outline, defined, registered, status, text: text.getText(),
}));
process.exit(0);
