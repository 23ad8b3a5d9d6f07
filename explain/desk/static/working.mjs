// A working as it is typed: how each line is read, and at the end of a line its verdict. Without this the form is posted.

const form = document.querySelector('#working');
const lines = form.querySelector('#lines');
const said = form.querySelector('#said');
const state = form.querySelector('#state');
const hint = form.querySelector('#hint');
const line = form.querySelector('#for');
const echo = form.querySelector('#echo');
const keep = form.querySelector('#keep');
const judged = document.querySelector('#judged');
const address = new URL(form.action);
const draft = `lines ${address.pathname}`;
const setter = globalThis.trustedTypes?.createPolicy('desk', {createHTML: made => made}) ?? {createHTML: made => made};

const QUIET = 250;       // milliseconds behind the last key until a line is read
const PATIENCE = 700;    // until it is said that something is being judged
const MOST_TRIES = 5;

let hints = 0;

// A random word for this window, so that a working that grows is counted once. It says nothing of who types.
function visit() {
  const [here] = stores();
  const made = Array.from(crypto.getRandomValues(new Uint8Array(16)), each => each.toString(16).padStart(2, '0')).join('');
  try {
    const known = here.getItem(`visit ${address.pathname}`) ?? made;
    here.setItem(`visit ${address.pathname}`, known);
    return known;
  } catch {
    return '';
  }
}

// The one place that sets markup: of elements that the desk made.
function put(element, markup) {
  element.innerHTML = setter.createHTML(markup);
}

function say(element, words) {
  if (element.textContent !== words) element.textContent = words;
}

// ---------------------------------------------------------------------- the draft
function stores() {
  try { return [sessionStorage, localStorage]; } catch { return []; }
}

function remember() {
  const [here, device] = stores();
  if (!here) return;
  try {
    here.setItem(draft, lines.value);
    if (keep.checked) device.setItem(draft, lines.value); else device.removeItem(draft);
  } catch { /* a full store: the lines are on the page all the same */ }
}

function recall() {
  const [here, device] = stores();
  if (!here) return;
  keep.parentElement.hidden = false;
  keep.checked = device.getItem(draft) !== null;
  const kept = here.getItem(draft) ?? device.getItem(draft);
  if (kept && !lines.value) lines.value = kept;
}

// ---------------------------------------------------------------------- one request out at a time, the newest wish kept
function channel(path, done) {
  let out = false;
  let wish = null;
  let tries = 0;

  async function go() {
    const asked = wish;
    wish = null;
    out = true;
    let wait = 0;
    try {
      const answer = await fetch(address.pathname + path, {
        method: 'POST', headers: {'content-type': 'application/json'}, body: JSON.stringify(asked),
      });
      const told = await answer.json().catch(() => ({}));
      if (told.stopped === 'busy' && tries < MOST_TRIES) {
        tries += 1;
        wish ??= asked;
        wait = 1000 * (Number(answer.headers.get('retry-after')) || 2) * (0.5 + Math.random());
        done({...told, again: true}, asked);
      } else {
        tries = 0;
        done(told, asked);
      }
    } catch {
      done({offline: true}, asked);
      if (tries < MOST_TRIES) {
        tries += 1;
        wish ??= asked;
        wait = 3000;
      }
    }
    if (wait) await new Promise(resolve => setTimeout(resolve, wait));
    out = false;
    if (wish) go();
  }

  return asked => {
    wish = asked;
    if (!out) go();
  };
}

// ---------------------------------------------------------------------- how it is read
const read = channel('/read', told => {
  if (!told.echo) return;
  put(echo, told.echo.map(([number, made]) => `<li value="${Number(number)}" data-line="${Number(number)}"><div class="as">${made}</div></li>`).join(''));
});

// ---------------------------------------------------------------------- what is said of it
let patience = 0;

const judge = channel('/judge', (told, asked) => {
  clearTimeout(patience);
  if (told.offline) {
    say(state, 'No line to the desk just now. Your lines are kept in this tab, and it is tried again.');
    return;
  }
  if (told.stopped) {
    say(state, told.again ? 'Many are at work: trying again.' : told.said);
    return;
  }
  if (told.fault) {
    say(state, 'This problem has changed, and its file has a fault now.');
    return;
  }
  if (told.html === undefined) {
    say(state, 'That could not be judged: the working may be too long.');
    return;
  }
  const current = asked.text === lines.value;
  say(state, current ? '' : 'Of the lines as they were: they have changed since.');
  say(said, told.said);
  said.dataset.state = told.state;
  hints = told.hints;
  line.value = told.line;
  put(judged, told.html);
  const kept = document.querySelector('#kept');
  if (kept && told.kept) {
    kept.hidden = false;
    say(kept.querySelector('#kept-code'), told.kept);
  }
  hint.hidden = told.state !== 'wrong' || hints >= 3;
  hint.value = hints + 1;
  say(hint, hints ? 'One hint more' : 'A hint');
});

function ask(wanted) {
  clearTimeout(patience);
  patience = setTimeout(() => say(state, 'Being judged …'), PATIENCE);
  judge({text: lines.value, hints: wanted, for: Number(line.value), visit: visit()});
}

let quiet = 0;
let before = '';

lines.addEventListener('input', event => {
  remember();
  clearTimeout(quiet);
  quiet = setTimeout(() => read({text: lines.value}), QUIET);
  const ended = event.inputType === 'insertLineBreak' || event.inputType === 'insertFromPaste'
    || lines.value.split('\n').length !== before.split('\n').length;
  before = lines.value;
  if (ended && lines.value.trim()) ask(hints);
});

form.addEventListener('submit', event => {
  event.preventDefault();
  remember();
  ask(event.submitter === hint ? hints + 1 : hints);
});

document.querySelector('#forget')?.addEventListener('click', async () => {
  const kept = document.querySelector('#kept');
  const answer = await fetch(`${address.pathname}/forget`, {
    method: 'POST', headers: {'content-type': 'application/json'},
    body: JSON.stringify({code: kept.querySelector('#kept-code').textContent}),
  }).catch(() => null);
  if (answer?.ok) {
    kept.hidden = true;
    say(state, 'Your lines are deleted from the desk.');
    lines.focus();
  } else {
    say(state, 'They could not be deleted just now: try again in a moment.');
  }
});

keep.addEventListener('change', remember);

hints = Math.max(0, Number(hint.value) - 1);
recall();
before = lines.value;
if (lines.value.trim()) {
  read({text: lines.value});
  if (!judged.firstElementChild) ask(0);
}
