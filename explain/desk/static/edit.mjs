// A problem as it is changed: in its file, in a field, or by turning what is drawn. Without this the form is posted.

const form = document.querySelector('#edit');
const text = form.querySelector('#text');
const said = form.querySelector('#said');
const state = form.querySelector('#state');
const figure = form.querySelector('#figure');
const sheet = form.querySelector('#sheet');
const stale = form.querySelector('#stale');
const fault = form.querySelector('#fault');
const fields = form.querySelector('#fields');
const holds = form.querySelector('#handles');
const turns = form.querySelector('#turns');
const undo = form.querySelector('#undo');
const digest = form.querySelector('#digest');
const conflict = form.querySelector('#conflict');
const theirText = form.querySelector('#their-text');
const theirDigest = form.querySelector('#their-digest');
const worked = document.querySelector('#worked');
const title = document.querySelector('#title');
const address = new URL(form.action).pathname;
const draft = `file ${address}`;
const setter = globalThis.trustedTypes?.createPolicy('desk', {createHTML: made => made}) ?? {createHTML: made => made};

const QUIET = 250;       // milliseconds behind the last key until the text is drawn
const MOST_TRIES = 5;
const MOST_BACK = 100;   // changes that can be taken back

// The one place that sets markup: of elements that the desk made.
function put(element, markup) {
  element.innerHTML = setter.createHTML(markup);
}

function say(element, words) {
  if (element.textContent !== words) element.textContent = words;
}

// ---------------------------------------------------------------------- the text, and the way back
let saved = text.value;
const before = [];

function remember(mark) {
  const last = before.at(-1);
  if (last && mark && last.mark === mark) return;
  before.push({text: text.value, mark});
  if (before.length > MOST_BACK) before.shift();
  undo.hidden = false;
}

// Only what differs is replaced, so that the cursor stays where it was.
function write(wanted) {
  const old = text.value;
  if (old === wanted) return;
  let start = 0;
  while (start < old.length && start < wanted.length && old[start] === wanted[start]) start += 1;
  let end = 0;
  while (end < old.length - start && end < wanted.length - start && old.at(-1 - end) === wanted.at(-1 - end)) end += 1;
  text.setRangeText(wanted.slice(start, wanted.length - end), start, old.length - end, 'preserve');
  changed();
}

function changed() {
  say(state, text.value === saved ? '' : 'Not saved yet.');
  try {
    if (text.value === saved) sessionStorage.removeItem(draft);
    else sessionStorage.setItem(draft, JSON.stringify({text: text.value, digest: digest.value}));
  } catch { /* a full store: the text is on the page all the same */ }
}

function recall() {
  try {
    const kept = JSON.parse(sessionStorage.getItem(draft));
    if (typeof kept?.text !== 'string' || kept.text === text.value) return;
    text.value = kept.text;
    digest.value = kept.digest;
    say(state, 'Not saved yet: your text was kept in this tab.');
    wish({op: 'redraw'});
  } catch { /* no store, or nothing of ours in it */ }
}

addEventListener('beforeunload', event => {
  if (text.value !== saved) event.preventDefault();
});

// ---------------------------------------------------------------------- one request out at a time
// Wishes wait in their order; of those that say the same thing again only the newest is kept.
const wishes = [];
let out = false;

function wish(asked) {
  const place = wishes.findIndex(each => each.op === asked.op && ['redraw', 'turn'].includes(each.op) && same(each, asked));
  if (place >= 0) wishes.splice(place, 1, asked); else wishes.push(asked);
  if (!out) go();
}

function same(one, other) {
  return JSON.stringify(one.path) === JSON.stringify(other.path);
}

async function ask(op, body) {
  const answer = await fetch(`${address}/${op}`, {
    method: 'POST', headers: {'content-type': 'application/json'}, body: JSON.stringify(body),
  });
  return {status: answer.status, ...await answer.json().catch(() => ({}))};
}

const pause = seconds => new Promise(resolve => setTimeout(resolve, 1000 * seconds));

async function go() {
  out = true;
  let tries = 0;
  while (wishes.length) {
    const current = wishes[0];
    const {op, ...more} = current;
    const sent = text.value;
    let told;
    try {
      told = await ask(op, {text: sent, ...more});
    } catch {
      say(said, 'No line to the desk just now. Your text is kept in this tab, and it is tried again.');
      if ((tries += 1) > MOST_TRIES) break;
      await pause(3);
      continue;
    }
    if (told.stopped === 'busy' && (tries += 1) <= MOST_TRIES) {
      await pause(0.5 + Math.random());
      continue;
    }
    if (op !== 'redraw' && text.value !== sent && told.text !== undefined) continue;  // typed meanwhile: once more, of that
    tries = 0;
    if (wishes[0] === current) wishes.shift();
    show(told);
  }
  out = false;
}

// ---------------------------------------------------------------------- what came back
let shape = [];
let known = {};  // what the file has for each field, or was asked to have


function show(told) {
  if (told.kept || told.stopped) {
    say(said, told.kept ?? told.said);
    known = {};
    return;
  }
  if (told.said === undefined) {
    say(said, told.status === 413 ? 'This text is too long for the page.' : 'The desk does not answer as it should: load the page again.');
    return;
  }
  if (told.text !== undefined) write(told.text);
  if (told.fields !== undefined) showFields(told);
  fields.disabled = told.fields === undefined;
  fault.hidden = told.told === undefined;
  if (told.told !== undefined) {
    put(fault, told.told);
    goTo(told.fault.line);
  }
  stale.hidden = told.told === undefined || !figure.firstElementChild;
  sheet.classList.toggle('stale', !stale.hidden);
  if (told.figure !== undefined) {
    put(figure, told.figure);
    put(worked, told.html);
    sheet.hidden = false;
    say(title, told.title);
    document.title = told.title;
    showHandles(told.handles, told.size);
  }
  say(said, told.said);
}

// Fields are set anew only where other keys are there; else their values alone change, so that the cursor stays.
function showFields(told) {
  const ids = [...Object.keys(told.values), ...Object.keys(told.heads)];
  const there = new Set(shape);
  known = {...told.values};
  if (ids.length !== shape.length || ids.some(each => !there.has(each))) {
    const open = [...fields.querySelectorAll('details[open]')].map(each => each.id);
    const within = fields.contains(document.activeElement);
    const here = document.activeElement?.closest('details')?.id;
    put(fields, told.fields);
    for (const each of open) document.getElementById(each)?.setAttribute('open', '');
    if (within) moveOn(shape.length ? ids.find(each => !there.has(each)) : '', here);
    shape = ids;
    return;
  }
  for (const [id, value] of Object.entries(told.values)) {
    const box = document.getElementById(id);
    if (box && box !== document.activeElement && box.value !== value) box.value = value;
  }
  for (const [id, [name, gist]] of Object.entries(told.heads)) {
    const [first, second] = document.getElementById(id).querySelectorAll('summary span');
    say(first, name);
    say(second, gist);
  }
}

// The cursor goes on to what is new, else stays with the table that it was in.
function moveOn(fresh, here) {
  const found = document.getElementById(fresh) ?? document.getElementById(here) ?? fields.querySelector('details');
  const table = found?.closest('details');
  if (!table) return;
  if (fresh) table.open = true;
  (found === table ? table.querySelector('summary') : found).focus();
}

function goTo(line) {
  if (!line) return;
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'second';
  button.textContent = `Show line ${line}`;
  button.addEventListener('click', () => {
    const lines = text.value.split('\n');
    const start = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0);
    text.setSelectionRange(start, start + (lines[line - 1] ?? '').length);
    text.scrollTop = text.scrollHeight * start / text.value.length - text.clientHeight / 3;
    text.focus();
  });
  fault.append(button);
}

// ---------------------------------------------------------------------- what can be turned
// A handle in the figure and a number below it are two ways to one angle.
const handles = new Map();
let size = [1, 1];

function showHandles(found, [wide, high]) {
  size = [wide, high];
  const there = new Set();
  for (const each of found) {
    const key = JSON.stringify(each.path);
    there.add(key);
    if (!handles.has(key)) handles.set(key, newHandle(key));
    const handle = handles.get(key);
    handle.told = each;
    if (!handle.held && !waits(handle)) handle.degrees = each.degrees;
    if (handle.held) hold(handle, handle.held.last);  // the new figure may have another size, and the pivot another place
    settle(handle);
  }
  for (const [key, handle] of handles) {
    if (there.has(key)) continue;
    handle.grip.remove();
    handle.row.remove();
    handles.delete(key);
  }
  turns.hidden = handles.size === 0;
}

function waits(handle) {
  return wishes.some(each => each.op === 'turn' && same(each, handle.told));
}

function newHandle(key) {
  const grip = document.createElement('span');
  grip.className = 'handle';
  grip.tabIndex = 0;
  grip.setAttribute('role', 'slider');
  grip.setAttribute('aria-describedby', 'turns-how');
  grip.setAttribute('aria-valuemin', '0');
  holds.append(grip);
  const row = document.createElement('label');
  const name = document.createElement('span');
  const number = document.createElement('input');
  const words = document.createElement('span');
  number.type = 'text';
  number.inputMode = 'decimal';
  number.size = 5;
  number.autocomplete = 'off';
  row.append(name, number, words);
  turns.append(row);
  const handle = {key, grip, row, name, number, words, held: null};
  grip.addEventListener('pointerdown', event => grasp(handle, event));
  grip.addEventListener('pointermove', event => drag(handle, event));
  grip.addEventListener('pointerup', () => release(handle));
  grip.addEventListener('pointercancel', () => release(handle));
  grip.addEventListener('keydown', event => step(handle, event));
  number.addEventListener('change', () => {
    const wanted = Number(number.value.replace(',', '.'));
    if (number.value.trim() && Number.isFinite(wanted)) turn(handle, wanted, '');
    number.value = String(handle.degrees);
  });
  return handle;
}

// A handle where the figure has it, leaning as far as its angle is ahead of the figure.
function settle(handle) {
  const {told, grip} = handle;
  const lean = (handle.degrees - told.degrees) * told.grows;
  const [x, y] = rotated(told.at, told.about, lean);
  grip.style.left = `${100 * x / size[0]}%`;
  grip.style.top = `${100 * y / size[1]}%`;
  const shown = String(handle.degrees);
  grip.setAttribute('aria-label', `Direction of ${told.name}`);
  grip.setAttribute('aria-valuemax', told.most);
  grip.setAttribute('aria-valuenow', shown);
  grip.setAttribute('aria-valuetext', `${shown} degrees ${told.words}`);
  grip.dataset.kind = told.kind;
  handle.name.textContent = told.name;
  handle.words.textContent = `° ${told.words}`;
  if (document.activeElement !== handle.number) handle.number.value = shown;
  for (const group of figure.querySelectorAll('g[data-name]')) {
    if (group.dataset.name !== told.name || group.dataset.kind !== told.kind) continue;
    const moved = group.parentNode.transform?.baseVal.consolidate()?.matrix;
    const about = `${told.about[0] - (moved?.e ?? 0)} ${told.about[1] - (moved?.f ?? 0)}`;
    if (lean) group.setAttribute('transform', `rotate(${-lean} ${about})`); else group.removeAttribute('transform');
  }
}

function rotated([x, y], [ax, ay], degrees) {
  const turn = degrees * Math.PI / 180;
  const [right, up] = [x - ax, ay - y];
  return [ax + right * Math.cos(turn) - up * Math.sin(turn), ay - right * Math.sin(turn) - up * Math.cos(turn)];
}

function turn(handle, wanted, mark) {
  const degrees = Math.min(Math.max(Math.round(wanted * 10) / 10, 0), handle.told.most);
  if (degrees === handle.degrees) {
    settle(handle);
    return;
  }
  remember(mark && `${mark} ${handle.key}`);
  handle.degrees = degrees;
  settle(handle);
  wish({op: 'turn', path: handle.told.path, degrees});
}

function bearing(event, handle) {
  const box = holds.getBoundingClientRect();
  const x = (event.clientX - box.left) / box.width * size[0] - handle.told.about[0];
  const y = handle.told.about[1] - (event.clientY - box.top) / box.height * size[1];
  return Math.atan2(y, x) * 180 / Math.PI;
}

let grasps = 0;

function grasp(handle, event) {
  if (event.button) return;
  event.preventDefault();
  handle.grip.focus({preventScroll: true});
  handle.grip.setPointerCapture(event.pointerId);
  grasps += 1;
  hold(handle, event);
}

// From here on a handle turns as far as the pointer does.
function hold(handle, {clientX, clientY}) {
  const last = {clientX, clientY};
  handle.held = {last, from: bearing(last, handle), degrees: handle.degrees, mark: `drag ${grasps}`};
}

function drag(handle, event) {
  if (!handle.held) return;
  handle.held.last = {clientX: event.clientX, clientY: event.clientY};
  const by = (bearing(event, handle) - handle.held.from + 540) % 360 - 180;
  const wanted = handle.held.degrees + by * handle.told.grows;
  turn(handle, event.shiftKey ? wanted : Math.round(wanted), handle.held.mark);
}

function release(handle) {
  handle.held = null;
}

const KEYS = {ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 10, PageDown: -10};

function step(handle, event) {
  if (event.ctrlKey || event.altKey || event.metaKey) return;
  const ends = {Home: 0, End: handle.told.most};
  if (!(event.key in KEYS) && !(event.key in ends)) return;
  event.preventDefault();
  const by = KEYS[event.key] * (event.shiftKey ? 0.1 : 1);
  turn(handle, event.key in ends ? ends[event.key] : handle.degrees + by, 'keys');
}

// ---------------------------------------------------------------------- what a person does
let quiet = 0;

text.addEventListener('beforeinput', () => remember('typing'));

text.addEventListener('input', () => {
  changed();
  clearTimeout(quiet);
  quiet = setTimeout(() => wish({op: 'redraw'}), QUIET);
});

fields.addEventListener('change', event => {
  const {id, value, dataset: {path}} = event.target;
  if (!path || known[id] === value) return;  // a change is told again when the cursor leaves
  known[id] = value;
  remember('');
  wish({op: 'put', path: JSON.parse(path), value});
});

fields.addEventListener('keydown', event => {
  if (event.key !== 'Enter' || event.target.localName !== 'input') return;
  event.preventDefault();
  event.target.dispatchEvent(new Event('change', {bubbles: true}));
});

turns.addEventListener('keydown', event => {
  if (event.key !== 'Enter') return;
  event.preventDefault();
  event.target.dispatchEvent(new Event('change'));
});

fields.addEventListener('click', event => {
  const {add, cut, more} = event.target.dataset;
  if (add) {
    remember('');
    wish({op: 'add', kind: add});
  } else if (cut) {
    remember('');
    wish({op: 'cut', path: JSON.parse(cut)});
  } else if (more) {
    const [chosen] = fields.querySelector(`#${CSS.escape(more)}`).selectedOptions;
    remember('');
    wish({op: 'put', path: JSON.parse(chosen.value), value: chosen.dataset.value});
  }
});

undo.addEventListener('click', () => {
  const last = before.pop();
  undo.hidden = before.length === 0;
  if (!last) return;
  write(last.text);
  wish({op: 'redraw'});
  if (undo.hidden) text.focus();
});

// ---------------------------------------------------------------------- saving
let saving = false;

async function save(over) {
  if (saving) return;
  saving = true;
  const sent = text.value;
  try {
    const told = await ask('save', {text: sent, digest: over ? theirDigest.value : digest.value});
    if (told.there) {
      theirText.value = told.there.text;
      theirDigest.value = told.there.digest;
      conflict.hidden = false;
      say(state, 'Nothing was saved: the file has changed on disk.');
      conflict.scrollIntoView({block: 'nearest'});
    } else if (told.digest) {
      digest.value = told.digest;
      saved = sent;
      conflict.hidden = true;
      changed();
      if (text.value === saved) say(state, fault.hidden ? 'Saved.' : 'Saved. The file has a fault still, so nobody can work on it yet.');
    } else {
      say(state, told.said ?? 'It could not be saved. Your text is kept in this tab.');
    }
  } catch {
    say(state, 'No line to the desk: nothing was saved. Your text is kept in this tab.');
  }
  saving = false;
}

form.addEventListener('submit', event => {
  event.preventDefault();
  const wanted = event.submitter?.value ?? 'save';
  if (wanted === 'redraw') {
    wish({op: 'redraw'});
  } else if (wanted === 'take') {
    remember('');
    write(theirText.value);
    digest.value = theirDigest.value;
    saved = text.value;
    conflict.hidden = true;
    changed();
    wish({op: 'redraw'});
    text.focus();
  } else {
    save(wanted === 'over');
  }
});

addEventListener('keydown', event => {
  if ((event.ctrlKey || event.metaKey) && event.key === 's') {
    event.preventDefault();
    save(false);
  }
});

// ---------------------------------------------------------------------- as the page begins
form.classList.add('live');
form.querySelector('#parts').hidden = false;
form.querySelector('#redraw').hidden = true;
const begin = JSON.parse(form.dataset.begin);
shape = begin.ids ?? [];
fields.disabled = begin.ids === undefined;
if (begin.handles) showHandles(begin.handles, begin.size);
if (begin.fault) goTo(begin.fault.line);
recall();
