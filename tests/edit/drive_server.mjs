// drive_server.mjs TOOL RULES CORPUS: a client of the Language Server Protocol drives `TOOL edit` through whole sessions.
// The framing, the types and the application of edits are those of the protocol's open libraries, not ours.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createProtocolConnection, StreamMessageReader, StreamMessageWriter, CancellationTokenSource, DiagnosticSeverity,
} from 'vscode-languageserver-protocol/node.js';
import { TextDocument } from 'vscode-languageserver-textdocument';

const [tool, rules, corpus] = process.argv.slice(2);
const workspace = mkdtempSync(join(tmpdir(), 'grainside-edit-'));
const uriOf = (name) => pathToFileURL(join(workspace, name)).href;
const kCapabilities = {
  general: { positionEncodings: ['utf-16'] },
  workspace: { workspaceEdit: { documentChanges: true, resourceOperations: ['create'] } },
  textDocument: {
    publishDiagnostics: { relatedInformation: true, versionSupport: true },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'source'] } } },
    completion: { completionItem: {} },
  },
};

class Session {
  constructor(...options) {
    this.process = spawn(tool, ['edit', '--on', '2026-11-26', ...options]);
    this.log = '';
    this.process.stderr.on('data', (data) => { this.log += data; });
    this.ended = new Promise((resolve) => this.process.on('exit', resolve));
    this.connection = createProtocolConnection(
      new StreamMessageReader(this.process.stdout), new StreamMessageWriter(this.process.stdin));
    this.connection.onError(([error]) => { if (!this.expectsErrors) throw error; });
    this.told = new Map();     // by URI: what was published last
    this.waiting = [];
    this.connection.onNotification('textDocument/publishDiagnostics', (params) => {
      this.told.set(params.uri, params);
      this.waiting = this.waiting.filter((wait) => !wait(params));
    });
    this.texts = new Map();
    this.connection.listen();
  }

  async start(capabilities = kCapabilities) {
    const answer = await this.connection.sendRequest('initialize', {
      processId: process.pid, rootUri: pathToFileURL(workspace).href, capabilities,
      workspaceFolders: [{ uri: pathToFileURL(workspace).href, name: 'bags' }],
    });
    await this.connection.sendNotification('initialized', {});
    return answer;
  }

  published(uri, version) {
    const known = this.told.get(uri);
    if (known?.version === version) return Promise.resolve(known.diagnostics);
    return new Promise((resolve, reject) => {
      const late = setTimeout(() => reject(new Error(`nothing was said of ${uri}, version ${version}`)), 10000);
      this.waiting.push((params) => {
        if (params.uri !== uri || params.version !== version) return false;
        clearTimeout(late);
        resolve(params.diagnostics);
        return true;
      });
    });
  }

  async open(name, languageId, text) {
    const uri = name.includes(':') ? name : uriOf(name);
    this.texts.set(uri, TextDocument.create(uri, languageId, 1, text));
    await this.connection.sendNotification('textDocument/didOpen',
      { textDocument: { uri, languageId, version: 1, text } });
    return [uri, await this.published(uri, 1)];
  }

  // Edits of the protocol, sent as incremental changes: from the end, so that each is in terms of what stands there.
  async change(uri, edits) {
    const before = this.texts.get(uri);
    const contentChanges = [...edits]
      .sort((a, b) => before.offsetAt(b.range.start) - before.offsetAt(a.range.start))
      .map((edit) => ({ range: edit.range, text: edit.newText }));
    const after = TextDocument.create(uri, before.languageId, before.version + 1, TextDocument.applyEdits(before, edits));
    this.texts.set(uri, after);
    await this.connection.sendNotification('textDocument/didChange',
      { textDocument: { uri, version: after.version }, contentChanges });
    return this.published(uri, after.version);
  }

  request(method, params) { return this.connection.sendRequest(method, params); }

  at(uri, words, offset = 0) {
    const text = this.texts.get(uri);
    const begin = text.getText().indexOf(words);
    assert.notEqual(begin, -1, words);
    return text.positionAt(begin + offset);
  }

  wordsOf(uri, diagnostic) { return this.texts.get(uri).getText(diagnostic.range); }

  actions(uri, diagnostic, only) {
    return this.request('textDocument/codeAction',
      { textDocument: { uri }, range: diagnostic.range, context: { diagnostics: [diagnostic], ...(only && { only }) } });
  }

  // Takes the first action whose title begins so, and gives what is said afterwards.
  async take(uri, diagnostic, title) {
    const actions = await this.actions(uri, diagnostic);
    const action = actions.find((one) => one.title.startsWith(title));
    assert.ok(action, `no action '${title}' among ${actions.map((one) => one.title).join(' | ')}`);
    assert.equal(action.kind, 'quickfix');
    assert.deepEqual(action.diagnostics, [diagnostic]);
    const [edit] = action.edit.documentChanges;
    assert.equal(edit.textDocument.uri, uri);
    assert.equal(edit.textDocument.version, this.texts.get(uri).version);
    return this.change(uri, edit.edits);
  }

  async labels(uri, position) {
    const items = await this.request('textDocument/completion', { textDocument: { uri }, position });
    return items.map((item) => item.label);
  }

  raw(text) { this.process.stdin.write(text); }

  async end() {
    assert.equal(await this.request('shutdown'), null);
    await this.connection.sendNotification('exit');
    assert.equal(await this.ended, 0);
  }
}

const only = (diagnostics, code) => {
  const found = diagnostics.filter((one) => one.code === code);
  assert.equal(found.length, 1, `${code} among ${JSON.stringify(diagnostics, null, 1)}`);
  return found[0];
};

const checks = {
  async 'says what it can, in both encodings'() {
    const session = new Session();
    const answer = await session.start();
    assert.equal(answer.capabilities.positionEncoding, 'utf-16');
    assert.equal(answer.capabilities.textDocumentSync.change, 2);
    assert.equal(answer.serverInfo.name, 'grainside');
    await session.end();
    const bytes = new Session();
    const other = await bytes.start({ ...kCapabilities, general: { positionEncodings: ['utf-8', 'utf-16'] } });
    assert.equal(other.capabilities.positionEncoding, 'utf-8');
    const [, said] = await bytes.open('a.txt', 'plaintext', '\u{1F45C} Genuine PU leather tote.');
    assert.equal(only(said, 'genuine-on-imitation').range.start.character, 5);
    await bytes.end();
  },

  async 'listings of every format: at the words, told, mended'() {
    const session = new Session();
    await session.start();
    const formats = [
      ['draft.txt', 'plaintext', '\u{1F45C} Caf\u00E9 tote.\r\nGenuine PU leather body, cotton lining.\r\n'],
      ['draft.md', 'markdown', '# Caf\u00E9 tote \u{1F45C}\n\n- Body: **genuine PU leather**\n- Lining: cotton\n'],
      ['one.json', 'json', '{\n "name": "Tote \\ud83d\\udc5c",\n "description": "\\u00ab caf\\u00e9 \\u00bb genuine PU leather body"\n}\n'],
      ['many.jsonl', 'plaintext', '{"sku":"a","name":"Cotton tote"}\n{"sku":"b","name":"Genuine PU leather tote"}\n'],
      ['table.csv', 'csv', 'sku,name,description\na,Tote,"The ""city"" tote, genuine PU leather"\n'],
    ];
    for (const [name, language, text] of formats) {
      const [uri, said] = await session.open(name, language, text);
      const flagged = only(said, 'genuine-on-imitation');
      assert.match(session.wordsOf(uri, flagged), /^genuine PU leather$/i, name);
      assert.equal(flagged.severity, DiagnosticSeverity.Error);
      assert.equal(flagged.source, 'grainside');
      assert.match(flagged.message, /is misleading\. .* Say instead: '/);
      const hover = await session.request('textDocument/hover', { textDocument: { uri }, position: flagged.range.start });
      assert.equal(hover.contents.kind, 'markdown');
      assert.match(hover.contents.value, /\*because\*: .*\n.*\*say instead\*: .*\n.*\*sources\*: .*16 CFR/s);
      assert.deepEqual(hover.range, flagged.range);
      const left = await session.take(uri, flagged, 'Write ');
      assert.deepEqual(left.filter((one) => one.code === 'genuine-on-imitation'), [], name);
    }
    const [page, found] = await session.open('page.html', 'html',
      '<!DOCTYPE html><title>Tote</title><h1>Tote</h1>\n<p>Genuine PU leather body,\nfor every day.</p>');
    const inPage = only(found, 'genuine-on-imitation');
    assert.match(session.wordsOf(page, inPage), /^Genuine PU leather$/);
    assert.deepEqual(await session.take(page, inPage, 'Write '), []);
    assert.match(session.texts.get(page).getText(), /<p>Imitation leather body,\nfor every day\.<\/p>$/);
    await session.end();
  },

  async 'changes: typed letter by letter, in one go, whole'() {
    const session = new Session();
    await session.start();
    const [uri, said] = await session.open('typed.txt', 'plaintext', 'Tote\u{1F45C}\n');
    assert.deepEqual(said, []);
    const end = () => session.texts.get(uri).positionAt(session.texts.get(uri).getText().length);
    let last;
    for (const letter of 'Body in genuine PU leather, \u00E9t\u00E9.') {
      last = session.change(uri, [{ range: { start: end(), end: end() }, newText: letter }]);
      last.catch(() => {});  // of many changes only the last must be told
    }
    assert.equal(session.wordsOf(uri, only(await last, 'genuine-on-imitation')), 'genuine PU leather');
    const before = session.texts.get(uri);
    const whole = TextDocument.create(uri, 'plaintext', before.version + 1, 'Waterproof lining.');
    session.texts.set(uri, whole);
    await session.connection.sendNotification('textDocument/didChange',
      { textDocument: { uri, version: whole.version }, contentChanges: [{ text: whole.getText() }] });
    const warned = await session.published(uri, whole.version);
    assert.equal(warned[0].severity, DiagnosticSeverity.Warning);
    await session.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
    while (session.told.get(uri).diagnostics.length !== 0) await new Promise((resolve) => setTimeout(resolve, 5));
    await session.end();
  },

  async 'everything at once, and what disagrees'() {
    const session = new Session();
    await session.start();
    const [uri, said] = await session.open('pouch.txt', 'plaintext', readFileSync(join(corpus, 'demo/key_pouch.txt'), 'utf8'));
    const against = said.find((one) => one.relatedInformation);
    assert.equal(session.texts.get(uri).getText(against.relatedInformation[0].location.range), 'calf leather');
    const [all] = await session.actions(uri, against, ['source.fixAll']);
    assert.equal(all.kind, 'source.fixAll.grainside');
    const left = await session.change(uri, all.edit.documentChanges[0].edits);
    // Which of two statements is true, only a person can tell.
    const errors = left.filter((one) => one.severity === DiagnosticSeverity.Error);
    assert.ok(errors.length > 0 && errors.every((one) => one.relatedInformation), JSON.stringify(errors));
    assert.deepEqual(await session.actions(uri, against, ['refactor']), []);
    await session.end();
  },

  async 'a dossier: faults, verdicts at the words, names to choose from'() {
    const session = new Session();
    await session.start();
    const text = [
      'sample: {what: Tote, category: bag}', 'listing:', '  captured: 2026-09-01', '  description: |',
      '    A \u{1F45C} tote in genuine leather,', '    waterproof.', 'parts:', '  body:', '    readings:',
      '      - {method: cut-edge, outcome: woven-backing, date: 2026-09-10}', ''].join('\n');
    const [uri, said] = await session.open('tote.yaml', 'yaml', text);
    const names = await session.labels(uri, session.at(uri, 'cut-edge', 2));
    assert.ok(names.includes('density') || names.length > 10, names.join());
    const outcomes = await session.labels(uri, session.at(uri, 'woven-backing', 3));
    assert.ok(outcomes.length > 2, outcomes.join());
    const keys = await session.labels(uri, session.at(uri, 'date: 2026', 2));
    assert.ok(keys.includes('date') && keys.includes('photo') && keys.includes('note'), keys.join());
    assert.ok(!keys.includes('outcome') && !keys.includes('method'), keys.join());
    const parts = await session.labels(uri, session.at(uri, 'body:', 2));
    assert.ok(parts.includes('lining') && parts.includes('hardware'), parts.join());
    // Whatever the text above got: a known method and outcome from the lists, and a wrong one.
    const method = session.at(uri, 'woven-backing');
    const fixed = await session.change(uri, [{ range: { start: method, end: session.at(uri, 'woven-backing', 13) }, newText: outcomes[0] }]);
    assert.deepEqual(fixed.filter((one) => one.code === 'unknown-outcome'), []);
    assert.ok(fixed.length > 0);
    for (const one of fixed) assert.match(session.wordsOf(uri, one), /genuine leather|leather|waterproof/);
    const wrong = await session.change(uri, [{ range: { start: session.at(uri, 'cut-edge'), end: session.at(uri, 'cut-edge', 3) }, newText: 'cutt' }]);
    assert.equal(session.wordsOf(uri, only(wrong, 'unknown-method')), 'cutt-edge');
    assert.ok(said);
    const strap = readFileSync(join(corpus, 'demo/watch_strap.yaml'), 'utf8');
    const [alone] = await session.open('untitled:strap.yaml', 'yaml', strap);
    assert.ok(session.told.get(alone).diagnostics.length > 0, 'its listing cannot be read from nowhere');
    await session.end();
  },

  async 'dossier words are mended in YAML'() {
    const session = new Session();
    await session.start();
    const [uri, said] = await session.open('bag.yaml', 'yaml', [
      'sample: {what: Bag, category: bag}', 'listing:', "  description: 'Maker''s bag in genuine PU leather.'", ''].join('\n'));
    const flagged = said.find((one) => one.severity === DiagnosticSeverity.Error);
    assert.match(session.wordsOf(uri, flagged), /PU leather/);
    const left = await session.take(uri, flagged, 'Write ');
    assert.deepEqual(left.filter((one) => one.severity === DiagnosticSeverity.Error), []);
    await session.end();
  },

  async 'a client that knows little gets plain edits'() {
    const session = new Session();
    await session.start({ textDocument: { codeAction: { codeActionLiteralSupport: {} } } });
    const [uri, said] = await session.open('few.txt', 'plaintext', 'Genuine PU leather tote');
    assert.deepEqual(Object.keys(said[0]).sort(), ['code', 'message', 'range', 'severity', 'source']);
    const [action, ...others] = await session.actions(uri, said[0]);
    assert.deepEqual(others, [], 'nothing can be made a file of');
    assert.deepEqual(Object.keys(action.edit), ['changes']);
    assert.deepEqual(await session.change(uri, action.edit.changes[uri]), []);
    const hover = await session.request('textDocument/hover', { textDocument: { uri }, position: { line: 0, character: 2 } });
    assert.equal(hover, null);
    await session.end();
    const none = new Session();
    await none.start({});
    const [other, flagged] = await none.open('none.txt', 'plaintext', 'Genuine PU leather tote');
    assert.deepEqual(await none.actions(other, flagged[0]), []);
    const plain = await none.request('textDocument/hover', { textDocument: { uri: other }, position: { line: 0, character: 2 } });
    assert.equal(plain.contents.kind, 'plaintext');
    await none.end();
  },

  async 'concessions: proposed, filled in, in force'() {
    const session = new Session();
    await session.start();
    const [uri, said] = await session.open('tag.txt', 'plaintext', 'Tote in vegan leather, lined in cotton.');
    const flagged = only(said, 'vegan-called-leather');
    const actions = await session.actions(uri, flagged);
    const concede = actions.find((one) => one.title.startsWith("Let 'vegan leather' stand"));
    const [create, entry] = concede.edit.documentChanges;
    assert.deepEqual(create, { kind: 'create', uri: uriOf('concessions.yaml') });
    assert.equal(entry.textDocument.version, null);
    const text = TextDocument.applyEdits(TextDocument.create('', '', 0, ''), entry.edits);
    const [agreed, faults] = await session.open('concessions.yaml', 'yaml', text);
    assert.deepEqual(faults.map((one) => one.code), ['missing-key', 'missing-key', 'wrong-type'].slice(0, faults.length));
    assert.equal(faults.length, 3);
    let now = await session.change(agreed, ['reason:  #', 'owner:   #', 'until:   #'].map((key, i) => ({
      range: { start: session.at(agreed, key, 8), end: session.at(agreed, key, 8) },
      newText: ['tags are printed', 'packaging', '2027-01-31'][i],
    })));
    assert.deepEqual(now, []);
    await session.published(uri, 1);
    await session.request('textDocument/hover', { textDocument: { uri }, position: flagged.range.start });
    assert.equal(only(session.told.get(uri).diagnostics, 'vegan-called-leather').severity, DiagnosticSeverity.Hint);
    assert.match(session.told.get(uri).diagnostics[0].message, /conceded until 2027-01-31 by packaging: tags are printed/);
    const keys = await session.labels(agreed, session.at(agreed, 'owner', 1));
    assert.ok(keys.includes('listing') && keys.includes('field'), keys.join());
    now = await session.change(agreed, [{ range: { start: session.at(agreed, '2027'), end: session.at(agreed, '2027', 4) }, newText: '2020' }]);
    assert.equal(only(now, 'concession-ran-out').severity, DiagnosticSeverity.Warning);
    await session.end();
    assert.ok(!existsSync(join(workspace, 'concessions.yaml')), 'the server writes no files');
  },

  async 'rule files: faults, proofs, names, and rules that count at once'() {
    const session = new Session('--rules', rules);
    await session.start();
    const [listing, before] = await session.open('l.txt', 'plaintext', 'Premium quality leather tote.');
    const path = join(rules, 'wording/praise.yaml');
    const [uri, said] = await session.open(pathToFileURL(path).href, 'yaml', readFileSync(path, 'utf8'));
    assert.deepEqual(said, []);
    const text = session.texts.get(uri).getText();
    const grade = /\n  grade: (\w+)/.exec(text);
    const at = session.texts.get(uri).positionAt(grade.index + '\n  grade: '.length + 1);
    assert.deepEqual(await session.labels(uri, at), ['misleading', 'unsupported', 'vague']);
    const keys = await session.labels(uri, session.at(uri, '\n  grade:', 4));
    assert.ok(keys.includes('unless_beside') && keys.includes('say_instead'), keys.join());
    const sources = await session.labels(uri, session.at(uri, '\n  sources: [', '\n  sources: ['.length));
    assert.ok(sources.includes('us-16cfr24-2-a') || sources.length > 100, String(sources.length));
    const hover = await session.request('textDocument/hover', { textDocument: { uri }, position: session.at(uri, '\n  sources: [', '\n  sources: ['.length + 1) });
    assert.match(hover.contents.value, /\*says\*: /);
    const start = session.texts.get(uri).positionAt(grade.index + '\n  grade: '.length);
    const end = session.texts.get(uri).positionAt(grade.index + grade[0].length);
    const wrong = await session.change(uri, [{ range: { start, end }, newText: 'mislead' }]);
    assert.equal(session.wordsOf(uri, only(wrong, 'unknown-grade')), 'mislead');
    const again = await session.change(uri, [{ range: { start, end: { line: start.line, character: start.character + 7 } }, newText: 'misleading' }]);
    assert.deepEqual(again.filter((one) => one.code !== 'proof'), []);
    assert.ok(before.length >= 0 && listing);
    await session.end();
  },

  async 'wrong requests are refused, cancelled ones too'() {
    const session = new Session();
    await assert.rejects(session.request('textDocument/hover', {}), { code: -32002 });
    await session.start();
    const [uri] = await session.open('a.txt', 'plaintext', 'Tote');
    await assert.rejects(session.request('initialize', {}), { code: -32600 });
    await assert.rejects(session.request('textDocument/rename', {}), { code: -32601 });
    await assert.rejects(session.request('$/unknown', {}), { code: -32601 });
    await session.connection.sendNotification('$/unknown', {});
    await assert.rejects(session.request('textDocument/hover', { textDocument: { uri: 'file:///no' }, position: {} }), { code: -32602 });
    for (const position of [{}, { line: -1, character: 0 }, { line: 'x', character: 0 }, { line: 0.5, character: 0 }, null]) {
      await assert.rejects(session.request('textDocument/hover', { textDocument: { uri }, position }), { code: -32602 });
    }
    assert.equal(await session.request('textDocument/hover',
      { textDocument: { uri }, position: { line: 2147483647, character: 2147483647 } }), null);
    await session.connection.sendNotification('textDocument/didChange', { textDocument: { uri, version: 2 }, contentChanges: 'x' });
    // Both frames reach the server in one piece behind a document that takes a while.
    const frame = (message) => { const body = JSON.stringify({ jsonrpc: '2.0', ...message }); return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`; };
    const cancelled = new Promise((resolve) => {
      const chunks = [];
      session.process.stdout.on('data', (data) => { chunks.push(data); if (String(Buffer.concat(chunks)).includes('-32800')) resolve(); });
    });
    session.expectsErrors = true;
    session.raw(frame({ method: 'textDocument/didChange', params: { textDocument: { uri, version: 3 }, contentChanges: [{ text: 'a' }] } }) +
      frame({ id: 'to-cancel', method: 'textDocument/hover', params: { textDocument: { uri }, position: { line: 0, character: 0 } } }) +
      frame({ method: '$/cancelRequest', params: { id: 'to-cancel' } }));
    await cancelled;
    await session.end();
  },

  async 'malformed messages do not end it'() {
    const session = new Session();
    session.expectsErrors = true;
    await session.start();
    const body = (text) => `Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`;
    const broken = [
      'Content-Length: 1073741824\r\n\r\n', 'Content-Length: -5\r\n\r\n', 'Content-Length: x\r\n\r\n', 'GET / HTTP/1.1\r\n\r\n',
      'Content-Type: x\r\n\r\n', 'no header at all', body('{"jsonrpc":'), body('[]'), body('7'), body('{}'),
      body('{"jsonrpc":"1.0","id":1,"method":"shutdown"}'), body('{"jsonrpc":"2.0","id":{},"method":"shutdown"}'),
      body('['.repeat(100000) + ']'.repeat(100000)), body('{"jsonrpc":"2.0","id":2,"method":7}'),
      'Content-Length: 20\r\nContent-Type: text/plain; charset=utf-16\r\n\r\n',
    ];
    for (const [i, text] of broken.entries()) {
      session.raw(text);
      const [uri, said] = await session.open(`after${i}.txt`, 'plaintext', 'Genuine PU leather tote');
      assert.equal(session.wordsOf(uri, only(said, 'genuine-on-imitation')), 'Genuine PU leather', text.slice(0, 60));
    }
    session.process.stdin.write(Buffer.concat([Buffer.from('Content-Length: 40\r\n\r\n{"jsonrpc":"2.0","method":"'), Buffer.from([0xff, 0xfe, 0xc0, 0xaf]), Buffer.from('"}       ')]));
    await session.open('last.txt', 'plaintext', 'Tote');
    const long = 'Cotton tote. '.repeat(1_400_000);  // 18 MB
    const [, large] = await session.open('large.txt', 'plaintext', long);
    assert.equal(large[0].code, 'too-large');
    await session.open('half.txt', 'plaintext', 'half a pair \ud83d, genuine PU leather');
    await session.end();
  },

  async 'ends as the protocol says'() {
    const without = new Session();
    await without.start();
    await without.connection.sendNotification('exit');
    assert.equal(await without.ended, 1);
    const gone = new Session();
    await gone.start();
    gone.process.stdin.end();
    assert.equal(await gone.ended, 1);
    const after = new Session();
    await after.start();
    await after.request('shutdown');
    await assert.rejects(after.request('textDocument/hover', {}), { code: -32600 });
    await after.connection.sendNotification('exit');
    assert.equal(await after.ended, 0);
  },
};

const began = Date.now();
let failed = 0;
for (const [name, check] of Object.entries(checks)) {
  const from = Date.now();
  try {
    await Promise.race([check(), new Promise((_, reject) => setTimeout(() => reject(new Error('it takes too long')), 30000).unref())]);
    console.log(`ok ${name} (${Date.now() - from} ms)`);
  } catch (error) {
    ++failed;
    console.log(`FAILED ${name}\n${error.stack}`);
  }
}
rmSync(workspace, { recursive: true });
console.log(`${Object.keys(checks).length} checks, ${failed} failed, ${Date.now() - began} ms`);
process.exit(failed === 0 ? 0 : 1);
